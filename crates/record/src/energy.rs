//! What it uses: what was counted, a day, a year, and how that stands. Costs are for the owner.

use diagnosis::{Energy, Stands};
use job::Content;
use wording::page::entry;
use wording::record as words;

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
    let lines = Energy::of(from.job).map_or_else(Vec::new, |energy| lines(&energy, from));
    let lines = (!lines.is_empty()).then_some(Block::Lines(lines));
    table.into_iter().chain(lines).collect()
}

fn lines(energy: &Energy, from: Source<'_>) -> Vec<String> {
    let locale = from.locale;
    let mut lines = Vec::new();
    if let Some((by, share)) = &energy.run {
        lines.push(words::run_share(*by, share, locale));
    }
    let settled = energy.metering.as_ref().and_then(|one| one.settled());
    if let Some(consumption) = settled {
        lines.push(words::day_and_year(consumption, locale));
    }
    if let Stands::Against(limits) = &energy.stands {
        lines.extend(limits.iter().map(|one| words::limit(one, locale)));
    }
    if energy.stands == Stands::CoolingDown {
        lines.push(words::WAS_COOLING_DOWN.to_owned());
    }
    if let (Audience::Owner, Some((cost, off_by))) = (from.audience, energy.cost) {
        lines.push(words::cost(cost, off_by, locale));
    }
    lines
}
