//! The smallest round, straight bore that removes all wear, and the wall it leaves.
//!
#![doc = include_str!("../../docs/clean-up.md")]

use crate::bounds::{self, Bound};
use crate::calc::{Formula, formula};
use crate::decision::risk::finite;
use crate::error::{Error, ErrorKind};
use crate::shape::angle::turned;
use crate::shape::circle::{self, Reference};
use crate::shape::cylinder;
use crate::shape::least::{larger, smaller};
use crate::shape::minimax::{Fence, Lowest, Seen, least_largest};
use crate::shape::{check, check_as_many, extremes};

formula! {
    /// Diameter that a bar cuts to reach a wall at a distance from its axis.
    CleanUpDiameter: clean_up ["mm"] = (distance, centring, stock) => 2.0 * (distance + centring) + stock;
        source "definition: the farthest point of the wall, an error of the centre, and tool marks, as a diameter";
    /// Clean-up about the original axis when the wear is the same on both sides.
    WornOnBothSides: clean_up ["mm"] = (largest, stock) => largest + stock; source "half of the diametral wear on each side";
    /// The same when one side alone is worn.
    WornOnOneSide: clean_up ["mm"] = (unworn, largest, stock) => unworn + 2.0 * (largest - unworn) + stock;
        source "the whole diametral wear on one side, which a bar about the original axis cuts on both";
    /// Wall that is left where the bar cuts it.
    WallLeft: left ["mm"] = (radius, wall, reached) => radius + wall - reached; source "outside of the wall less what the bar reaches";
}

/// Where the bar stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BarAxis {
    /// On the axis that the radii are counted from, which is the original one.
    Original,
    /// On the axis of the worn bore, by least squares.
    Worn,
    /// Where the bore comes out smallest.
    Best {
        /// Most that the axis may move at the middle of the depths, in mm.
        shift_mm: f64,
        /// Most that it may lean, as mm on each mm of depth.
        tilt: f64,
    },
}

impl BarAxis {
    /// The fixed axis of a word: `original` or `worn`.
    ///
    /// # Errors
    /// [`ErrorKind::UnknownChoice`].
    pub fn from_word(word: &str) -> Result<Self, Error> {
        match word {
            "original" => Ok(BarAxis::Original),
            "worn" => Ok(BarAxis::Worn),
            _ => Err(crate::job::unknown_choice(word, &["original", "worn"])),
        }
    }
}

/// The wall of a worn bore, from a radial trace about the original axis. All three have the same length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WornWall<'a> {
    /// Angles, 0 to 360 degrees.
    pub angles_deg: &'a [f64],
    /// Depths from the deck.
    pub depths_mm: &'a [f64],
    /// Distances of the wall from the original axis.
    pub radii_mm: &'a [f64],
}

/// What a bar adds to the bare wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Allowance {
    /// Largest error of the centre of the bar, in mm; 0 leaves it out.
    pub centring_mm: f64,
    /// What removes the marks of the tool, on the diameter, in mm.
    pub stock_mm: f64,
}

/// How well the radii are known, as standard uncertainties in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RadiusUncertainty {
    /// Of one radius alone.
    pub each_mm: f64,
    /// Of all radii together, as that of a setting.
    pub common_mm: f64,
}

/// A point of the wall that holds the bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Place of the point among those given.
    pub place: usize,
    /// Its share: how far the radius of the bore moves with that of the point. The shares add up to 1.
    pub share: f64,
}

/// The axis of a bar, from the original axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// Its place at the middle of the depths, toward 0 degrees, in mm.
    pub x_mm: f64,
    /// The same toward 90 degrees.
    pub y_mm: f64,
    /// Middle of the depths, in mm.
    pub middle_mm: f64,
    /// How far it moves toward 0 degrees for each mm of depth.
    pub slope_x: f64,
    /// The same toward 90 degrees.
    pub slope_y: f64,
}

/// A bore that removes all wear.
#[derive(Debug, Clone, PartialEq)]
pub struct CleanUp {
    /// Its diameter with every allowance, in mm.
    pub diameter_mm: f64,
    /// Standard uncertainty of the diameter from that of the radii, in mm.
    pub standard_uncertainty_mm: f64,
    /// No bar that may stand elsewhere needs less than this, in mm; that of a fixed axis is the diameter.
    pub least_mm: f64,
    /// The bar that cuts it.
    pub bar: Bar,
    /// The points that hold it, by their places.
    pub held_by: Vec<Held>,
}

/// The smallest round, straight bore about an axis that removes all wear.
///
/// Distances are taken across, at the depth of each point: at the largest lean that is accepted this exceeds the distance square to the axis by
/// 2 parts in a million, on the safe side.
///
/// # Errors
/// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] with the place of the number as field (`radii_mm/3`), [`ErrorKind::MissingField`] for fewer than
/// three points (five for the worn axis over several depths), [`ErrorKind::Contradiction`] for columns of other lengths and for points that do not tell where the axis lies.
pub fn clean_up(
    wall: &WornWall<'_>,
    axis: BarAxis,
    allowance: &Allowance,
    uncertainty: &RadiusUncertainty,
) -> Result<CleanUp, Error> {
    let points = Points::new(wall)?;
    bounds::CENTRING.check("centring_mm", allowance.centring_mm)?;
    bounds::STOCK.check("stock_mm", allowance.stock_mm)?;
    bounds::FORM_ERROR.check("each_mm", uncertainty.each_mm)?;
    bounds::FORM_ERROR.check("common_mm", uncertainty.common_mm)?;
    let placed = match axis {
        BarAxis::Original => points.fixed(Axis::ORIGINAL),
        BarAxis::Worn => points.fixed(points.worn(wall)?),
        BarAxis::Best { shift_mm, tilt } => {
            bounds::BAR_SHIFT.check("shift_mm", shift_mm)?;
            bounds::BAR_TILT.check("tilt", tilt)?;
            points.best(shift_mm, tilt)?
        }
    };
    let diameter =
        |distance: f64| CleanUpDiameter::evaluate([distance, allowance.centring_mm, allowance.stock_mm]);
    let squares = placed.held_by.iter().fold(0.0, |sum, held| sum + held.share * held.share);
    let RadiusUncertainty { each_mm: each, common_mm: common } = *uncertainty;
    Ok(CleanUp {
        diameter_mm: diameter(placed.farthest),
        standard_uncertainty_mm: 2.0 * (common * common + squares * each * each).sqrt(),
        least_mm: diameter(placed.least),
        bar: placed.axis.bar(points.middle),
        held_by: placed.held_by,
    })
}

/// The clean-up about the original axis as far as diameters tell it: they never show on which side a bore is worn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CleanUpRange {
    /// When both sides are worn alike, in mm.
    pub lower_mm: f64,
    /// When one side alone is worn, in mm. This one is used, unless a radial trace or the unworn ridge shows how the wear is shared.
    pub upper_mm: f64,
}

/// The clean-up about the original axis from the unworn and the largest diameter, in mm.
///
/// # Errors
/// When a number is not finite or impossible, and [`ErrorKind::OutOfOrder`] for a largest diameter below the unworn one.
pub fn from_diameters(unworn_mm: f64, largest_mm: f64, stock_mm: f64) -> Result<CleanUpRange, Error> {
    bounds::BORE.check("unworn_mm", unworn_mm)?;
    bounds::BORE.check("largest_mm", largest_mm)?;
    bounds::STOCK.check("stock_mm", stock_mm)?;
    if largest_mm < unworn_mm {
        let reason = "a worn bore is not smaller than it was";
        let error = Error::new(ErrorKind::OutOfOrder, largest_mm.to_string(), reason).value(largest_mm);
        return Err(error.at("largest_mm"));
    }
    Ok(CleanUpRange {
        lower_mm: WornOnBothSides::evaluate([largest_mm, stock_mm]),
        upper_mm: WornOnOneSide::evaluate([unworn_mm, largest_mm, stock_mm]),
    })
}

/// A wall as it was gauged, by ultrasound as a rule.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallPoint {
    /// Angle, 0 to 360 degrees.
    pub angle_deg: f64,
    /// Depth from the deck, in mm.
    pub depth_mm: f64,
    /// Distance of the wall from the original axis when it was gauged, in mm.
    pub radius_mm: f64,
    /// Thickness, in mm.
    pub wall_mm: f64,
}

/// Thickness that is left of every wall when a bore of this diameter is cut about the axis of a bar, in mm; below zero the bar comes through.
/// Where the bar does not reach the wall it stays as it is.
///
/// # Errors
/// When a number is not finite or impossible; the error names the place (`walls/2/wall_mm`). [`ErrorKind::Contradiction`] of the field `bar` for an axis that
/// is not within the bore.
pub fn walls_left(bar: &Bar, diameter_mm: f64, walls: &[WallPoint]) -> Result<Vec<f64>, Error> {
    bounds::BORE.check("diameter_mm", diameter_mm)?;
    check_walls(walls)?;
    let axis = Axis::of(bar)?;
    axis.stands_within(walls, bar.middle_mm, |_| diameter_mm / 2.0)?;
    let left = |wall: &WallPoint| {
        let reached = axis.reached(diameter_mm / 2.0, wall, bar.middle_mm);
        smaller(WallLeft::evaluate([wall.radius_mm, wall.wall_mm, reached]), wall.wall_mm)
    };
    Ok(walls.iter().map(left).collect())
}

fn check_walls(walls: &[WallPoint]) -> Result<(), Error> {
    for (k, wall) in walls.iter().enumerate() {
        let check = |bound: &Bound, field: &str, value| bound.check(&format!("walls/{k}/{field}"), value);
        check(&bounds::ANGLE, "angle_deg", wall.angle_deg)?;
        check(&bounds::DEPTH, "depth_mm", wall.depth_mm)?;
        check(&bounds::WALL_RADIUS, "radius_mm", wall.radius_mm)?;
        check(&bounds::WALL, "wall_mm", wall.wall_mm)?;
    }
    Ok(())
}

/// The largest bore about the axis of a bar that leaves at least a thickness of every wall, in mm; none without walls.
///
/// # Errors
/// As [`walls_left`], and when the least wall is impossible.
pub fn largest_by_walls(bar: &Bar, least_wall_mm: f64, walls: &[WallPoint]) -> Result<Option<f64>, Error> {
    bounds::WALL.check("least_wall_mm", least_wall_mm)?;
    check_walls(walls)?;
    let axis = Axis::of(bar)?;
    axis.stands_within(walls, bar.middle_mm, |wall| wall.radius_mm)?;
    let largest = |wall: &WallPoint| {
        2.0 * axis.radius_to(wall, wall.radius_mm + wall.wall_mm - least_wall_mm, bar.middle_mm)
    };
    Ok(walls.iter().map(largest).reduce(smaller))
}

/// An axis: its place at the middle of the depths, and its lean.
#[derive(Debug, Clone, Copy)]
struct Axis {
    x: f64,
    y: f64,
    slope_x: f64,
    slope_y: f64,
}

impl Axis {
    const ORIGINAL: Axis = Axis { x: 0.0, y: 0.0, slope_x: 0.0, slope_y: 0.0 };

    fn of(bar: &Bar) -> Result<Axis, Error> {
        bounds::DEPTH.check("bar/middle_mm", bar.middle_mm)?;
        Ok(Axis {
            x: finite("bar/x_mm", bar.x_mm)?,
            y: finite("bar/y_mm", bar.y_mm)?,
            slope_x: finite("bar/slope_x", bar.slope_x)?,
            slope_y: finite("bar/slope_y", bar.slope_y)?,
        })
    }

    /// Refuses an axis that is nowhere near the bore: at every wall it is nearer to the original axis than a radius.
    fn stands_within(
        self,
        walls: &[WallPoint],
        middle: f64,
        radius: impl Fn(&WallPoint) -> f64,
    ) -> Result<(), Error> {
        let near = |wall: &WallPoint| {
            let (x, y) = self.at(wall.depth_mm - middle);
            libm::hypot(x, y) < radius(wall)
        };
        match walls.iter().all(near) {
            true => Ok(()),
            false => {
                Err(Error::new(ErrorKind::Contradiction, "", "the bar does not stand within the bore")
                    .at("bar"))
            }
        }
    }

    /// The bar that stands on it; minus zero is zero.
    fn bar(self, middle_mm: f64) -> Bar {
        Bar {
            x_mm: self.x + 0.0,
            y_mm: self.y + 0.0,
            middle_mm,
            slope_x: self.slope_x + 0.0,
            slope_y: self.slope_y + 0.0,
        }
    }

    /// Its place so far below the middle.
    fn at(self, below: f64) -> (f64, f64) {
        (self.x + self.slope_x * below, self.y + self.slope_y * below)
    }

    /// How far from the original axis a bar of this radius reaches at the angle of a wall.
    fn reached(self, radius: f64, wall: &WallPoint, middle: f64) -> f64 {
        let (x, y) = self.at(wall.depth_mm - middle);
        let (cosine, sine) = turned(1, wall.angle_deg);
        let across = x * sine - y * cosine;
        x * cosine + y * sine + (radius * radius - across * across).sqrt()
    }

    /// Radius of the bar that reaches so far from the original axis at the angle of a wall.
    fn radius_to(self, wall: &WallPoint, reached: f64, middle: f64) -> f64 {
        let (x, y) = self.at(wall.depth_mm - middle);
        let (cosine, sine) = turned(1, wall.angle_deg);
        libm::hypot(reached * cosine - x, reached * sine - y)
    }
}

/// Where a bar stands and what holds it.
struct Placed {
    axis: Axis,
    /// distance of the farthest point
    farthest: f64,
    /// what no other axis goes below
    least: f64,
    held_by: Vec<Held>,
}

/// A point of the wall across the original axis, and how far it is below the middle of the depths.
struct Point {
    x: f64,
    y: f64,
    below: f64,
}

/// Points of a wall.
struct Points {
    all: Vec<Point>,
    middle: f64,
    /// of the depths
    half: f64,
}

/// How far the best axis is from a bound that none goes below, in mm.
const GAP_MM: f64 = 5e-10;
/// The same where rounding ends the search before; more is refused.
const WIDEST_GAP_MM: f64 = 1e-6;
/// Most rounds of the search for the best axis; the usual number is below ten, and below forty at the end of the shift that is allowed.
const MOST_ROUNDS: usize = 200;

impl Points {
    fn new(wall: &WornWall<'_>) -> Result<Self, Error> {
        let WornWall { angles_deg, depths_mm, radii_mm } = *wall;
        check(&[("angles_deg", angles_deg)], &bounds::ANGLE, 3)?;
        check(&[("depths_mm", depths_mm)], &bounds::DEPTH, 3)?;
        check(&[("radii_mm", radii_mm)], &bounds::WALL_RADIUS, 3)?;
        check_as_many(angles_deg, ("depths_mm", depths_mm))?;
        check_as_many(angles_deg, ("radii_mm", radii_mm))?;
        let (low, high) = extremes(depths_mm);
        let middle = low + (high - low) / 2.0;
        let point = |((angle, depth), radius): ((&f64, &f64), &f64)| {
            let (cosine, sine) = turned(1, *angle);
            Point { x: radius * cosine, y: radius * sine, below: depth - middle }
        };
        let all = angles_deg.iter().zip(depths_mm).zip(radii_mm).map(point).collect();
        Ok(Points { all, middle, half: (high - low) / 2.0 })
    }

    /// Distance of every point from an axis, in order.
    fn distances(&self, axis: Axis) -> impl Iterator<Item = f64> {
        self.all.iter().map(move |p| {
            let (x, y) = axis.at(p.below);
            libm::hypot(p.x - x, p.y - y)
        })
    }

    /// The point that is farthest from an axis, the first of equals, and its distance.
    fn farthest(&self, axis: Axis) -> (usize, f64) {
        let farther = |most: (usize, f64), (k, r): (usize, f64)| if r > most.1 { (k, r) } else { most };
        self.distances(axis).enumerate().fold((0, f64::NEG_INFINITY), farther)
    }

    fn fixed(&self, axis: Axis) -> Placed {
        let (place, farthest) = self.farthest(axis);
        Placed { axis, farthest, least: farthest, held_by: vec![Held { place, share: 1.0 }] }
    }

    /// Axis of the worn bore by least squares; of points at one depth it is upright.
    fn worn(&self, wall: &WornWall<'_>) -> Result<Axis, Error> {
        let (x, y): (Vec<f64>, Vec<f64>) = self.all.iter().map(|p| (p.x, p.y)).unzip();
        if self.half <= 0.0 {
            let found = circle::fit(&x, &y, Reference::LeastSquares)?;
            return Ok(Axis { x: found.x_mm, y: found.y_mm, ..Axis::ORIGINAL });
        }
        let found = cylinder::fit(&x, &y, wall.depths_mm, Reference::LeastSquares)?;
        Ok(Axis { x: found.x_mm, y: found.y_mm, slope_x: found.slope_x, slope_y: found.slope_y })
    }

    /// The axis with the nearest farthest point, by planes that lie below every distance (Kelley, Journal of the Society for Industrial and Applied
    /// Mathematics 8 (1960), from memory): a distance is a convex function of the place of the axis, so its tangents never exceed it, and their
    /// programme gives what no axis goes below.
    fn best(&self, shift: f64, tilt: f64) -> Result<Placed, Error> {
        let reach = Reach { shift, lean: tilt * self.half, half: self.half };
        let base = self.farthest(Axis::ORIGINAL).1;
        let start = [0.0; 4];
        let mut planes: Vec<(usize, Seen)> =
            (0..self.all.len()).filter_map(|k| self.plane(k, reach, start, base)).collect();
        let mut fences: Vec<Fence> = Vec::new();
        let mut best = Placed { least: f64::NEG_INFINITY, ..self.fixed(Axis::ORIGINAL) };
        let mut thinned = false;
        for _ in 0..MOST_ROUNDS {
            let seen: Vec<Seen> = planes.iter().map(|(_, seen)| seen.clone()).collect();
            let most = larger(reach.shift, reach.lean);
            let Some(lowest) = least_largest(&seen, &fences, most, GAP_MM / 100.0) else {
                // planes that are nearly the same leave the programme without an answer: the newest of each point is enough
                if thinned {
                    break;
                }
                thinned = true;
                planes = newest(planes);
                continue;
            };
            let at: [f64; 4] = lowest.shift.as_slice().try_into().unwrap_or(start);
            let (inside, beyond) = reach.within(at);
            fences.extend(beyond);
            let axis = reach.axis(inside);
            let (_, farthest) = self.farthest(axis);
            // both are true of every round: the best so far, and the highest bound so far
            if farthest < best.farthest {
                best = Placed { axis, farthest, ..best };
            }
            let least = base + lowest.level;
            if least > best.least {
                best = Placed { least, held_by: held_by(&lowest, &planes), ..best };
            }
            if best.farthest - best.least <= GAP_MM {
                break;
            }
            let higher = |(_, r): &(usize, f64)| *r > least + GAP_MM / 10.0;
            let broken: Vec<usize> =
                self.distances(axis).enumerate().filter(higher).map(|(k, _)| k).collect();
            planes.extend(broken.into_iter().filter_map(|k| self.plane(k, reach, inside, base)));
        }
        match best.farthest - best.least <= WIDEST_GAP_MM {
            true => Ok(Placed { least: smaller(best.least, best.farthest), ..best }),
            false => {
                let reason = "no place of the bar could be shown to be the best one";
                Err(Error::new(ErrorKind::Contradiction, "", reason).at("radii_mm"))
            }
        }
    }

    /// The tangent of the distance of a point at a place of the axis, in parts of the reach, seen from the original axis.
    fn plane(&self, k: usize, reach: Reach, at: [f64; 4], base: f64) -> Option<(usize, Seen)> {
        let point = self.all.get(k)?;
        let (x, y) = reach.axis(at).at(point.below);
        let (dx, dy) = (point.x - x, point.y - y);
        let r = libm::hypot(dx, dy);
        let (nx, ny) = (dx / r, dy / r);
        let along = if reach.lean > 0.0 { point.below / reach.half } else { 0.0 };
        let free = if reach.shift > 0.0 { 1.0 } else { 0.0 };
        let gradient = vec![-nx * free, -ny * free, -nx * along, -ny * along];
        let moved = gradient.iter().zip(at).fold(0.0, |sum, (g, a)| sum + g * a);
        Some((k, Seen { deviation: r - base - moved, gradient }))
    }
}

/// How far the axis may go, in mm: at the middle, and from there to the last depth.
#[derive(Debug, Clone, Copy)]
struct Reach {
    shift: f64,
    lean: f64,
    /// half of the depths
    half: f64,
}

impl Reach {
    fn axis(self, [x, y, p, q]: [f64; 4]) -> Axis {
        let half = if self.half > 0.0 { self.half } else { 1.0 };
        Axis { x, y, slope_x: p / half, slope_y: q / half }
    }

    /// A place brought within both discs, of shift and of lean, and a fence at each that it was outside of.
    fn within(self, [x, y, p, q]: [f64; 4]) -> ([f64; 4], Vec<Fence>) {
        let ((a, shift), (b, lean)) = (inside(x, y, self.shift), inside(p, q, self.lean));
        let of = |normal: [f64; 4], room| Fence { normal: normal.to_vec(), room };
        let fences = [
            shift.map(|(x, y)| of([x, y, 0.0, 0.0], self.shift)),
            lean.map(|(p, q)| of([0.0, 0.0, p, q], self.lean)),
        ];
        ([x * a, y * a, p * b, q * b], fences.into_iter().flatten().collect())
    }
}

/// What brings a place within a disc as a factor, and the direction in which it was outside.
fn inside(x: f64, y: f64, radius: f64) -> (f64, Option<(f64, f64)>) {
    let size = libm::hypot(x, y);
    match size > radius {
        true => (radius / size, Some((x / size, y / size))),
        false => (1.0, None),
    }
}

/// The last plane of each point, in the order of the points.
fn newest(mut planes: Vec<(usize, Seen)>) -> Vec<(usize, Seen)> {
    planes.reverse();
    planes.sort_by_key(|(point, _)| *point);
    planes.dedup_by_key(|(point, _)| *point);
    planes
}

/// Points that hold the lowest level; several planes of one point are one.
fn held_by(lowest: &Lowest, planes: &[(usize, Seen)]) -> Vec<Held> {
    let mut out: Vec<Held> = Vec::new();
    for (plane, share) in &lowest.held_by {
        let Some((place, _)) = planes.get(*plane) else { continue };
        match out.iter_mut().find(|h| h.place == *place) {
            Some(held) => held.share += share,
            None => out.push(Held { place: *place, share: *share }),
        }
    }
    crate::order::sort_by(&mut out, |a, b| a.place.cmp(&b.place));
    out
}
