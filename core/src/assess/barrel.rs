//! What is said of every bore of the engine beside its size: windows in the wall, and that it may not be machined.

use crate::bounds;
use crate::decision::finding::{Disposition, Finding};
use crate::decision::{Ground, Outcome};
use crate::error::{Error, ErrorKind};
use crate::job::document as doc;
use crate::job::{Entry, Given, Warning, check_length};
use crate::quantity::Angle;
use crate::report::WindowReport;
use crate::shape::angle::{check_width, width};
use crate::shape::bore::Port;

/// Places nearer than this, in mm or deg, are one, as elsewhere in a bore.
const NEAR: f64 = 0.001;

/// An opening in the wall, between two depths and from one angle onward to another.
pub(super) struct Window {
    depth: [Given; 2],
    angle: [Given; 2],
    what: String,
}

impl Window {
    pub(super) fn from_document(
        windows: &[doc::Window],
        length: &Given,
        warnings: &mut Vec<Warning>,
    ) -> Result<Vec<Self>, Error> {
        check_length(windows, |w| &w.from_depth)?;
        windows.iter().map(|w| Window::read(w, length, warnings)).collect()
    }

    fn read(window: &doc::Window, length: &Given, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        let from_depth = super::bore::read_depth(&window.from_depth, length, warnings)?;
        let to_depth = super::bore::read_depth(&window.to_depth, length, warnings)?;
        let from_angle = window.from_angle.read(&bounds::ANGLE, warnings)?;
        let to_angle = window.to_angle.read(&bounds::ANGLE, warnings)?;
        if from_depth.value >= to_depth.value {
            let reason = format!("it must be below from_depth, {}", from_depth.text);
            return Err(window.to_depth.refuse(ErrorKind::OutOfOrder, reason).value(to_depth.value));
        }
        check_width(from_angle.value, to_angle.value, "a window")
            .map_err(|e| window.to_angle.refuse(e.kind(), e.reason()).value(to_angle.value))?;
        let what = window.what.words()?.to_owned();
        Ok(Window { depth: [from_depth, to_depth], angle: [from_angle, to_angle], what })
    }

    /// The window as a part of the wall that does not support the piston.
    pub(super) fn port(&self) -> Port {
        let ([from_depth, to_depth], [from_angle, to_angle]) = (&self.depth, &self.angle);
        Port {
            from_deg: from_angle.value,
            to_deg: to_angle.value,
            from_mm: from_depth.value,
            to_mm: to_depth.value,
        }
    }

    pub(super) fn report(&self) -> WindowReport {
        let ([from_depth, to_depth], [from_angle, to_angle]) = (&self.depth, &self.angle);
        WindowReport {
            what: self.what.clone(),
            from_depth_mm: from_depth.value,
            to_depth_mm: to_depth.value,
            from_angle_deg: from_angle.value,
            to_angle_deg: to_angle.value,
        }
    }

    /// Does either end of a diameter stand on the window or its edge?
    fn touches(&self, depth: f64, axis: f64) -> bool {
        let ([top, bottom], [from, to]) = (&self.depth, &self.angle);
        let width = width(from.value, to.value);
        let within = |end: f64| {
            let onward = (end - from.value + 720.0) % 360.0;
            onward <= width + NEAR || onward >= 360.0 - NEAR
        };
        let at_depth = depth >= top.value - NEAR && depth <= bottom.value + NEAR;
        at_depth && (within(axis) || within(axis + 180.0))
    }
}

/// Refuses a diameter of which one end stands on a window: it is no diameter of the wall.
pub(super) fn clear_of_windows(
    windows: &[Window],
    depth: &Given,
    axis: &Given,
    entry: &Entry<Angle>,
) -> Result<(), Error> {
    match windows.iter().find(|w| w.touches(depth.value, axis.value)) {
        Some(window) => {
            let ([top, bottom], [from, to]) = (&window.depth, &window.angle);
            let reason = format!(
                "at {} one end of it stands on the window {} ({} to {} deep, {} to {}): that is no diameter of the wall",
                depth.text, window.what, top.text, bottom.text, from.text, to.text
            );
            Err(entry.refuse(ErrorKind::Contradiction, reason))
        }
        None => Ok(()),
    }
}

/// What takes the place of honing and boring when something rejects and the bore may not be machined.
pub(super) fn not_machined(why: Option<&str>, grounds: &[Ground], findings: &[Finding]) -> Option<Ground> {
    let rejected = grounds.iter().any(|g| g.outcome == Outcome::DoNotReuse)
        || findings.iter().any(|f| f.disposition == Disposition::Reject);
    let why = why.filter(|_| rejected)?;
    let reason = format!(
        "the bore may not be machined ({why}): neither honing nor boring brings it within its limits; it is replaced, or coated anew where that is offered"
    );
    Some(Ground::new(Outcome::DoNotReuse, reason))
}
