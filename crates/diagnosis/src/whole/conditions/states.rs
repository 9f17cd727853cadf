//! The states of conditions by name, from best to worst, as far as tables ask for them.

/// States of the supply.
pub(in crate::whole) mod supply {
    pub(in crate::whole) const SAGS: usize = 1;
    pub(in crate::whole) const DEAD: usize = 2;
    pub(in crate::whole) const TRIPS: usize = 3;
}

/// States of the call for cooling.
pub(in crate::whole) mod call {
    pub(in crate::whole) const TOO_SELDOM: usize = 1;
    pub(in crate::whole) const DEFROSTING: usize = 2;
    pub(in crate::whole) const IDLE: usize = 3;
}

/// What stops the compressor itself, once voltage and a call reach it.
pub(in crate::whole) mod compressor {
    pub(in crate::whole) const RUNS: usize = 0;
    pub(in crate::whole) const CUTS_OUT: usize = 1;
    pub(in crate::whole) const AFTER_LONG_REST: usize = 2;
    pub(in crate::whole) const HUMS: usize = 3;
    pub(in crate::whole) const BROKEN: usize = 4;
    pub(in crate::whole) const LEAKS: usize = 5;
}

/// What the compressor does when it is rested and plugged in.
pub(in crate::whole) mod motor {
    pub(in crate::whole) const RUNS: usize = 0;
    pub(in crate::whole) const TOO_SELDOM: usize = 1;
    pub(in crate::whole) const CUTS_OUT: usize = 2;
    pub(in crate::whole) const HUMS: usize = 3;
    pub(in crate::whole) const SILENT: usize = 4;
    pub(in crate::whole) const DEFROSTING: usize = 5;
    pub(in crate::whole) const DEAD: usize = 6;
    pub(in crate::whole) const TRIPS: usize = 7;
    pub(in crate::whole) const CALLED_IN_VAIN: usize = 8;
}

/// What the cabinet gets of the compressor, as far as it is asked for.
pub(in crate::whole) mod turns {
    pub(in crate::whole) const TOO_SELDOM: usize = 1;
    pub(in crate::whole) const UNTIL_IT_CUTS_OUT: usize = 2;
    pub(in crate::whole) const NOT: usize = 3;
    pub(in crate::whole) const NOT_THOUGH_CALLED: usize = 4;
}

/// What goes round.
pub(in crate::whole) mod pump {
    pub(in crate::whole) const FULL: usize = 0;
    pub(in crate::whole) const ERRATIC: usize = 1;
    pub(in crate::whole) const STARVED: usize = 2;
    pub(in crate::whole) const BLOCKED: usize = 3;
    pub(in crate::whole) const WEAK: usize = 4;
    pub(in crate::whole) const NONE: usize = 5;
}

/// What the compressor takes, once it runs.
pub(in crate::whole) mod watts {
    pub(in crate::whole) const USUAL: usize = 0;
    pub(in crate::whole) const HIGH: usize = 1;
}

/// What gets cold.
pub(in crate::whole) mod hold {
    pub(in crate::whole) const COLD: usize = 0;
    pub(in crate::whole) const UNBALANCED: usize = 1;
    pub(in crate::whole) const PARTLY: usize = 2;
}
