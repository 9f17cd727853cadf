//! Torque against capacitance with its band and the useful range. The same stands below in words.

use diagnosis::KitCurve;
use leptos::prelude::*;
use quantity::Farads;
use wording::{Locale, start_kit as words};

use super::plot::{FOOT, HEIGHT, Plot, WIDTH};

/// The picture.
pub(super) fn picture(curve: &KitCurve, locale: &Locale) -> AnyView {
    let Some(plot) = Plot::of(curve) else {
        return ().into_any();
    };
    view! {
        <svg class="kit-curve" viewBox=format!("0 0 {WIDTH} {HEIGHT}") aria-hidden="true">
            {grid(&plot, locale)}
            <path class="rest-band" d=plot.band(curve)></path>
            {useful(&plot, curve)}
            <path class="kit-plain" d=format!("M{:.1} {:.1}H{WIDTH}", left(&plot), plot.y(1.0))></path>
            <path class="rest-interval" d=plot.middle(curve)></path>
        </svg>
    }
    .into_any()
}

fn left(plot: &Plot) -> f64 {
    // The least capacitance of all lies at the left edge.
    plot.x(Farads::new(0.0))
}

fn grid(plot: &Plot, locale: &Locale) -> AnyView {
    let left = left(plot);
    let torques = plot.torques().into_iter().map(|torque| {
        let y = plot.y(torque);
        view! {
            <path class="rest-mark" d=format!("M{left:.1} {y:.1}H{WIDTH}")></path>
            <text class="rest-text" x=format!("{:.0}", left - 5.0) y=format!("{:.1}", y + 4.0) text-anchor="end">
                {locale.number(torque, 0)}
            </text>
        }
    });
    let micro = plot.microfarads().into_iter().map(|micro| {
        let x = plot.x(Farads::new(micro * 1e-6));
        view! {
            <path class="kit-tick" d=format!("M{x:.1} {FOOT}v5")></path>
            <text class="rest-text" x=format!("{x:.1}") y=format!("{:.0}", FOOT + 18.0) text-anchor="middle">
                {locale.number(micro, 0)}
            </text>
        }
    });
    view! {
        {torques.collect::<Vec<_>>()}
        {micro.collect::<Vec<_>>()}
    }
    .into_any()
}

/// Slanting strokes between two posts, each with a foot: told by shape, not by colour.
fn useful(plot: &Plot, curve: &KitCurve) -> AnyView {
    let (from, to) = (
        plot.x(curve.range.from.median),
        plot.x(curve.range.to.median),
    );
    view! {
        <path class="kit-strokes" d=strokes(from, to, plot.y(f64::INFINITY), FOOT)></path>
        <path class="kit-posts" d=posts(from, to, plot.y(f64::INFINITY), FOOT)></path>
    }
    .into_any()
}

/// How far apart the strokes are.
const STEP: f64 = 9.0;

/// Strokes that rise to the right at 45°, cut off at the sides of a box.
fn strokes(from: f64, to: f64, top: f64, foot: f64) -> String {
    let (wide, high) = (to - from, foot - top);
    let mut path = String::new();
    let mut start = STEP - high;
    while start < wide {
        // Along the stroke from the foot at `start`: as far as left and right edge let it.
        let (begin, end) = ((-start).max(0.0), (wide - start).min(high));
        if end > begin {
            path.push_str(&format!(
                "M{:.1} {:.1}L{:.1} {:.1}",
                from + start + begin,
                foot - begin,
                from + start + end,
                foot - end
            ));
        }
        start += STEP;
    }
    path
}

/// A post at each end, with a foot that points inwards.
fn posts(from: f64, to: f64, top: f64, foot: f64) -> String {
    let inwards = ((to - from) / 3.0).clamp(0.0, 6.0);
    format!(
        "M{:.1} {top:.1}H{from:.1}V{foot:.1}H{:.1}M{:.1} {top:.1}H{to:.1}V{foot:.1}H{:.1}",
        from + inwards,
        from + inwards,
        to - inwards,
        to - inwards
    )
}

/// What the shapes are.
pub(super) fn key() -> AnyView {
    let entries: [(Vec<(&'static str, String)>, &'static str); 4] = [
        (
            vec![("rest-interval", "M1 14C6 14 8 6 19 5".to_owned())],
            words::MIDDLE,
        ),
        (vec![("rest-band", "M1 3H19V17H1Z".to_owned())], words::BAND),
        (
            vec![
                ("kit-strokes", strokes(3.0, 17.0, 2.0, 18.0)),
                ("kit-posts", posts(3.0, 17.0, 2.0, 18.0)),
            ],
            words::USEFUL,
        ),
        (vec![("kit-plain", "M1 10H19".to_owned())], words::PLAIN),
    ];
    let entries = entries.into_iter().map(|(paths, text)| {
        let paths = paths.into_iter();
        let paths = paths.map(|(class, d)| view! { <path class=class d=d></path> });
        view! {
            <li>
                <svg class="rest-shape" viewBox="0 0 20 20" aria-hidden="true">
                    {paths.collect::<Vec<_>>()}
                </svg>
                <span>{text}</span>
            </li>
        }
    });
    view! { <ul class="rest-key">{entries.collect::<Vec<_>>()}</ul> }.into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ends(path: &str) -> Vec<(f64, f64)> {
        let points = path.split(['M', 'L']).filter(|part| !part.is_empty());
        let number = |text: &str| text.parse::<f64>().unwrap();
        points
            .map(|point| {
                let (x, y) = point.split_once(' ').unwrap();
                (number(x), number(y))
            })
            .collect()
    }

    #[test]
    fn strokes_stay_within_their_box_and_reach_both_of_its_sides() {
        for (from, to) in [(100.0, 180.0), (50.0, 300.0), (60.0, 63.0)] {
            let points = ends(&strokes(from, to, 10.0, 210.0));
            let inside = |&(x, y): &(f64, f64)| {
                (from - 0.06..=to + 0.06).contains(&x) && (9.9..=210.1).contains(&y)
            };
            assert!(points.iter().all(inside), "{from} to {to}");
            assert!(points.iter().any(|(x, _)| (x - from).abs() < 0.1));
            assert!(points.iter().any(|(x, _)| (x - to).abs() < 0.1));
            let slanting = |pair: &[(f64, f64)]| {
                let (right, up) = (pair[1].0 - pair[0].0, pair[0].1 - pair[1].1);
                (right - up).abs() < 0.21 && right > 0.0
            };
            assert!(points.chunks(2).all(slanting));
        }
    }

    #[test]
    fn nothing_is_drawn_where_the_range_is_empty() {
        assert_eq!(strokes(100.0, 100.0, 10.0, 210.0), "");
    }
}
