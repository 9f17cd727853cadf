//! Saturation against CoolProp 8.0.0 (I. H. Bell et al., Ind. Eng. Chem. Res. 53 (2014) 2498),
//! by `tests/reference/simulator_saturation.py`.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use quantity::Celsius;
use serde_json::Value;
use simulator::Refrigerant;

const REFERENCE: &str = include_str!("../../../tests/reference/simulator_saturation.json");

/// The worst relative error of a property over all cases of −50 … +80 °C.
fn worst(key: &str, ours: impl Fn(Refrigerant, Celsius) -> f64, floor: f64) -> f64 {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let cases = reference["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 81);
    let mut most: f64 = 0.0;
    for case in cases {
        let refrigerant = match case["refrigerant"].as_str().unwrap() {
            "R134a" => Refrigerant::R134a,
            "R600a" => Refrigerant::R600a,
            "R290" => Refrigerant::R290,
            other => panic!("{other}"),
        };
        let theirs = case[key].as_f64().unwrap();
        let celsius = Celsius::new(case["celsius"].as_f64().unwrap());
        let error = (ours(refrigerant, celsius) - theirs).abs() / theirs.abs().max(floor);
        most = most.max(error);
    }
    println!("{key}: {most:.2e}");
    most
}

#[test]
fn pressures_agree_with_coolprop() {
    let ours = |it: Refrigerant, at| it.saturation_pressure(at).get();
    assert!(worst("pressure", ours, 0.0) < 1e-4);
}

#[test]
fn densities_agree_with_coolprop() {
    let vapour = |it: Refrigerant, at| it.vapour_density(at);
    let liquid = |it: Refrigerant, at| it.liquid_density(at);
    assert!(worst("vapour density", vapour, 0.0) < 2e-3);
    assert!(worst("liquid density", liquid, 0.0) < 5e-4);
}

#[test]
fn heats_agree_with_coolprop() {
    let latent = |it: Refrigerant, at| it.latent_heat(at);
    let liquid = |it: Refrigerant, at| it.liquid_enthalpy(at);
    assert!(worst("latent heat", latent, 0.0) < 1e-3);
    // Enthalpy goes through 0 at 0 °C: relative to 10 kJ/kg at least.
    assert!(worst("liquid enthalpy", liquid, 10_000.0) < 5e-3);
}

#[test]
fn the_gas_constant_and_the_exponent_are_those_of_coolprop() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    for (refrigerant, name) in [
        (Refrigerant::R134a, "R134a"),
        (Refrigerant::R600a, "R600a"),
        (Refrigerant::R290, "R290"),
    ] {
        let of_coolprop = |place: usize| {
            reference["molar mass, vapour heat, exponent"][name][place]
                .as_f64()
                .unwrap()
        };
        assert!((refrigerant.gas_constant() * of_coolprop(0) - 8.314_462_6).abs() < 1e-6);
        assert!((refrigerant.vapour_heat() - of_coolprop(1)).abs() < 1e-6);
        assert!((refrigerant.isentropic_exponent() - of_coolprop(2)).abs() < 1e-9);
    }
}
