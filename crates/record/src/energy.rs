//! What it uses: what was counted, a day, a year, and how that stands. Costs are for the owner.

use diagnosis::{Energy, EnergyFigure, EnergyNeed};
use job::Content;
use wording::page::entry;
use wording::{energy as energy_words, record as words};

use crate::assembly::{Audience, Source};
use crate::page::{Block, Table};

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let lines = known(from).map(|energy| energy_words::at_a_glance(&energy, from.locale));
    let lines = lines.filter(|lines| !lines.is_empty()).map(Block::Lines);
    lines.into_iter().collect()
}

/// What was counted, and what its figures rest on.
pub(crate) fn metering(from: Source<'_>) -> Vec<Block> {
    let standing = from.job.standing();
    let counted = standing.iter().filter_map(|one| {
        let is_metered = matches!(one.content, Content::Metered(_));
        let said = entry(one, from.locale).filter(|_| is_metered)?;
        Some(vec![said.about, said.says])
    });
    let heads = [words::WHAT, words::FOUND];
    let table = Table::block(words::METERING, &heads, counted.collect());
    let lines = known(from).map(|energy| energy_words::behind(&energy, from.locale));
    let lines = lines.filter(|lines| !lines.is_empty()).map(Block::Lines);
    table.into_iter().chain(lines).collect()
}

fn known(from: Source<'_>) -> Option<Energy> {
    let energy = Energy::of(from.job)?;
    Some(match from.audience {
        Audience::Owner => energy,
        Audience::Buyer => without_money(energy),
    })
}

/// What it costs is the owner's, and so is that its price is missing.
fn without_money(mut energy: Energy) -> Energy {
    energy.cost = None;
    let price = EnergyNeed::Figure(EnergyFigure::Price);
    energy.missing.retain(|need| *need != price);
    energy
}
