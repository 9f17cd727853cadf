//! Networks from the literature, built the way their texts describe them.

use belief::{BuildError, Network};

const NO_YES: [&str; 2] = ["no", "yes"];

/// The burglar alarm of Pearl (*Probabilistic Reasoning in Intelligent Systems*, 1988) with the
/// numbers of Russell and Norvig (*Artificial Intelligence: A Modern Approach*, chapter on
/// probabilistic reasoning). Numbers from memory.
pub fn alarm() -> Result<Network, BuildError> {
    let mut network = Network::new();
    let burglary = network.prior("burglary", &NO_YES, &[0.999, 0.001])?;
    let earthquake = network.prior("earthquake", &NO_YES, &[0.998, 0.002])?;
    let rows = [[0.999, 0.001], [0.71, 0.29], [0.06, 0.94], [0.05, 0.95]];
    let alarm = network.table("alarm", &NO_YES, &[burglary, earthquake], &rows)?;
    network.table("john_calls", &NO_YES, &[alarm], &[[0.95, 0.05], [0.1, 0.9]])?;
    network.table("mary_calls", &NO_YES, &[alarm], &[[0.99, 0.01], [0.3, 0.7]])?;
    Ok(network)
}

/// The wet lawn as Murphy's "A brief introduction to graphical models and Bayesian networks"
/// (1998) has it. Numbers from memory.
pub fn sprinkler() -> Result<Network, BuildError> {
    let mut network = Network::new();
    let cloudy = network.prior("cloudy", &NO_YES, &[0.5, 0.5])?;
    let sprinkler = network.table("sprinkler", &NO_YES, &[cloudy], &[[0.5, 0.5], [0.9, 0.1]])?;
    let rain = network.table("rain", &NO_YES, &[cloudy], &[[0.8, 0.2], [0.2, 0.8]])?;
    let rows = [[1.0, 0.0], [0.1, 0.9], [0.1, 0.9], [0.01, 0.99]];
    network.table("wet", &NO_YES, &[sprinkler, rain], &rows)?;
    Ok(network)
}

/// The chest clinic of Lauritzen and Spiegelhalter ("Local computations with probabilities on
/// graphical structures and their application to expert systems", *Journal of the Royal
/// Statistical Society* B 50, 1988). Numbers from memory.
pub fn chest_clinic() -> Result<Network, BuildError> {
    let mut network = Network::new();
    let asia = network.prior("asia", &NO_YES, &[0.99, 0.01])?;
    let smoking = network.prior("smoking", &NO_YES, &[0.5, 0.5])?;
    let tuberculosis = network.table(
        "tuberculosis",
        &NO_YES,
        &[asia],
        &[[0.99, 0.01], [0.95, 0.05]],
    )?;
    let cancer = network.table("cancer", &NO_YES, &[smoking], &[[0.99, 0.01], [0.9, 0.1]])?;
    let bronchitis = network.table("bronchitis", &NO_YES, &[smoking], &[[0.7, 0.3], [0.4, 0.6]])?;
    let either = network.worst_of(
        "either",
        &NO_YES,
        &[(tuberculosis, &[0, 1]), (cancer, &[0, 1])],
    )?;
    network.table("x_ray", &NO_YES, &[either], &[[0.95, 0.05], [0.02, 0.98]])?;
    let rows = [[0.9, 0.1], [0.2, 0.8], [0.3, 0.7], [0.1, 0.9]];
    network.table("dyspnoea", &NO_YES, &[either, bronchitis], &rows)?;
    Ok(network)
}
