//! Coefficients of the fitted curves of each refrigerant.
//!
//! Answers: which polynomial stands for which property? Made by
//! `tests/reference/simulator_saturation.py` from CoolProp 8.0.0 (I. H. Bell et al., Ind. Eng.
//! Chem. Res. 53 (2014) 2498), and compared with it in `tests/saturation.rs`.
//!
//! Must never know: what the curves are used for.

use crate::curve::Curve;

/// The curves and constants of one refrigerant.
#[derive(Debug)]
pub(super) struct Properties {
    /// 1000/K → natural logarithm of the saturation pressure in pascals.
    pub(super) pressure_of_temperature: Curve,
    /// Natural logarithm of pascals → 1000/K at saturation.
    pub(super) temperature_of_pressure: Curve,
    /// Natural logarithm of pascals → that of vapour density times temperature, kg·K/m³.
    pub(super) vapour_of_pressure: Curve,
    /// The other way.
    pub(super) pressure_of_vapour: Curve,
    /// °C → density of saturated liquid, kg/m³.
    pub(super) liquid_density: Curve,
    /// °C → latent heat, J/kg.
    pub(super) latent_heat: Curve,
    /// °C → enthalpy of saturated liquid above that at 0 °C, J/kg.
    pub(super) liquid_enthalpy: Curve,
    /// Molar mass in kg/mol.
    pub(super) molar_mass: f64,
    /// Mean heat capacity of the vapour from −25 °C saturated to 40 °C, J/(kg·K).
    pub(super) vapour_heat: f64,
    /// The isentropic exponent with which the work of an ideal gas is that of the real one, from
    /// −25 °C saturated, drawn in at 25 °C, to the pressure of 45 °C.
    pub(super) exponent: f64,
}

pub(super) static R134A: Properties = Properties {
    pressure_of_temperature: Curve::new(
        3.65647427371,
        0.824816337987,
        [
            12.5994513762,
            -2.22913899452,
            -0.0704857724536,
            -0.012699665602,
            0.00493733541548,
            -0.00475024080578,
            0.00317621365292,
        ],
    ),
    temperature_of_pressure: Curve::new(
        12.5370892981,
        2.2466223605,
        [
            3.67953055946,
            -0.829796221903,
            -0.0267889229331,
            0.00275114636533,
            0.00243537554446,
            0.00221620395068,
            0.00129367304801,
        ],
    ),
    vapour_of_pressure: Curve::new(
        12.5370892981,
        2.2466223605,
        [
            8.22542900185,
            2.39250466413,
            0.125502241194,
            0.0386995311978,
            -0.00189025358847,
            0.069202257236,
            0.060268701647,
        ],
    ),
    pressure_of_vapour: Curve::new(
        8.40960849141,
        2.50121542769,
        [
            12.7093409472,
            2.33397395625,
            -0.134321182801,
            -0.0671227256915,
            -0.0279166495651,
            -0.0201631487354,
            -0.0100022141242,
        ],
    ),
    liquid_density: Curve::new(
        15.0,
        65.0,
        [
            1243.42587763,
            -231.958304574,
            -43.1201122887,
            -16.2780953741,
            -5.54844736922,
            -10.7107379062,
            -7.44852553225,
        ],
    ),
    latent_heat: Curve::new(
        15.0,
        65.0,
        [
            186600.000699,
            -55090.638195,
            -14038.3508934,
            -4759.20594556,
            -1410.6681129,
            -2906.4938071,
            -1942.27066566,
        ],
    ),
    liquid_enthalpy: Curve::new(
        15.0,
        65.0,
        [
            20477.5802812,
            90325.899667,
            7180.21894133,
            1935.39588912,
            629.588057386,
            1088.70470871,
            741.458025051,
        ],
    ),
    molar_mass: 0.102032,
    vapour_heat: 829.7681679,
    exponent: 1.077743524,
};

pub(super) static R600A: Properties = Properties {
    pressure_of_temperature: Curve::new(
        3.65647427371,
        0.824816337987,
        [
            11.9756636221,
            -2.18056231709,
            -0.0608335650156,
            -0.00859834766062,
            0.00429907852686,
            -0.00185910009457,
            0.000847667910512,
        ],
    ),
    temperature_of_pressure: Curve::new(
        11.9199775653,
        2.1910256168,
        [
            3.67752333439,
            -0.827587233864,
            -0.0233868667092,
            0.00177600770388,
            0.00194922831882,
            0.000992605526021,
            0.000388321896996,
        ],
    ),
    vapour_of_pressure: Curve::new(
        11.9199775653,
        2.1910256168,
        [
            7.01296903249,
            2.28118573085,
            0.072444383789,
            0.03448393224,
            0.0134017592979,
            0.0170506010021,
            0.0109855107945,
        ],
    ),
    pressure_of_vapour: Curve::new(
        7.10982471181,
        2.33282028668,
        [
            12.0128682066,
            2.23501061639,
            -0.0763813119603,
            -0.0371689073455,
            -0.0135619315602,
            -0.00679902614061,
            -0.00294589763808,
        ],
    ),
    liquid_density: Curve::new(
        15.0,
        65.0,
        [
            562.947237614,
            -78.4110515118,
            -9.40474270386,
            -3.20475816802,
            -1.07438589684,
            -0.640403661286,
            -0.287650154205,
        ],
    ),
    latent_heat: Curve::new(
        15.0,
        65.0,
        [
            339558.319725,
            -66965.9634857,
            -13573.3864548,
            -4330.94414318,
            -924.800909954,
            -772.743720552,
            -406.251994095,
        ],
    ),
    liquid_enthalpy: Curve::new(
        15.0,
        65.0,
        [
            34939.3145185,
            154253.213399,
            12770.1175445,
            1976.32796786,
            416.352732853,
            253.823109048,
            121.667799778,
        ],
    ),
    molar_mass: 0.0581222,
    vapour_heat: 1604.655933,
    exponent: 1.066265981,
};

pub(super) static R290: Properties = Properties {
    pressure_of_temperature: Curve::new(
        3.65647427371,
        0.824816337987,
        [
            13.0802038925,
            -1.87918645783,
            -0.026691852798,
            -0.0124698491057,
            0.00393295156853,
            -0.00471190543299,
            0.00328704969164,
        ],
    ),
    temperature_of_pressure: Curve::new(
        13.0607422908,
        1.89640294515,
        [
            3.66501739283,
            -0.832138659455,
            -0.0121556768946,
            0.00527709960139,
            0.00235099328283,
            0.00203275624575,
            0.00125812385965,
        ],
    ),
    vapour_of_pressure: Curve::new(
        13.0607422908,
        1.89640294515,
        [
            7.93658455944,
            2.06321625991,
            0.132198215959,
            0.0310236063245,
            -0.013487515185,
            0.0788671437694,
            0.07265578507,
        ],
    ),
    pressure_of_vapour: Curve::new(
        8.1283702552,
        2.17416437133,
        [
            13.2360530178,
            1.98019603229,
            -0.139876768046,
            -0.0646429186395,
            -0.0257589805212,
            -0.0190913240815,
            -0.00966867846675,
        ],
    ),
    liquid_density: Curve::new(
        15.0,
        65.0,
        [
            507.525779003,
            -95.674776825,
            -19.404584942,
            -6.02653410475,
            -1.49766273142,
            -6.53854228924,
            -5.00412140007,
        ],
    ),
    latent_heat: Curve::new(
        15.0,
        65.0,
        [
            352508.275498,
            -104135.825451,
            -32353.4439312,
            -9296.41266768,
            -1974.59501501,
            -8454.23940823,
            -6388.23871621,
        ],
    ),
    liquid_enthalpy: Curve::new(
        15.0,
        65.0,
        [
            38393.5887549,
            170697.356578,
            19210.308402,
            4092.30168799,
            733.35382638,
            3267.13232255,
            2490.51408734,
        ],
    ),
    molar_mass: 0.04409562,
    vapour_heat: 1648.174049,
    exponent: 1.082719456,
};
