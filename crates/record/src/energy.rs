//! What it uses: what was counted, a day, a year, and how that stands. Costs are for the owner.

use diagnosis::{Energy, EnergyFigure, EnergyNeed};
use job::Content;
use wording::page::entry;
use wording::{energy as energy_words, record as words};

use crate::assembly::{Audience, Source};
use crate::page::{Block, Table};

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let counted = standing.iter().filter_map(|one| {
        let is_metered = matches!(one.content, Content::Metered(_));
        let said = entry(one, from.locale).filter(|_| is_metered)?;
        Some(vec![said.about, said.says])
    });
    let heads = [words::WHAT, words::FOUND];
    let table = Table::block(words::ENERGY, &heads, counted.collect());
    let lines = Energy::of(from.job).map_or_else(Vec::new, |energy| {
        let energy = match from.audience {
            Audience::Owner => energy,
            Audience::Buyer => without_money(energy),
        };
        energy_words::report(&energy, from.locale)
    });
    let lines = (!lines.is_empty()).then_some(Block::Lines(lines));
    table.into_iter().chain(lines).collect()
}

/// What it costs is the owner's, and so is that its price is missing.
fn without_money(mut energy: Energy) -> Energy {
    energy.cost = None;
    let price = EnergyNeed::Figure(EnergyFigure::Price);
    energy.missing.retain(|need| *need != price);
    energy
}
