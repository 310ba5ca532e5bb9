//! Linear stacks: a handle that contributors and shared causes are added to, and what it is asked.

use crate::array::{array, array_out, fitting};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, kept, plain, status};
use crate::handle::{self, freed, lent, lent_to_change};
use crate::record::{Record, record};
use crate::text;
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::stack::{
    Allocation, Capability, Contributor, Share, Span, Stack, Tail, ToleranceCost, Variation, VariationKind,
    Wanted, cause_of_kind,
};

/// How a contributor varies, with its numbers in order: deviations from the nominal.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointVariation {
    /// Centre, standard deviation. A shared cause has no centre.
    Normal = 1,
    /// Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit.
    CapabilityTowardLower = 2,
    /// Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit.
    CapabilityTowardUpper = 3,
    /// Mean and standard deviation before sorting, lower and upper limit of the sorting.
    TruncatedNormal = 4,
    /// Centre, half-width. A shared cause has no centre.
    Rectangular = 5,
    /// Lower end, mode, upper end. Of a shared cause the half-width.
    Triangular = 6,
    /// Centre, half-width of the base, width of the top over that of the base. A shared cause has no centre.
    Trapezoidal = 7,
    /// Centre, half-width. A shared cause has no centre.
    Arcsine = 8,
    /// Two shapes, lower end, upper end.
    Beta = 9,
    /// Probability and value in turn, of two measured quantiles or more.
    Skewed = 10,
    /// The measured values.
    Sample = 11,
}

const KINDS: &str = "1 to 11";

/// A linear stack; made by gaugepoint_stack_new, freed by gaugepoint_stack_free and by nothing else.
///
/// Lengths are in one unit, the caller's. It may be asked from any number of threads at once; while it is added to or
/// freed, nothing else may use it.
pub struct GaugepointStack {
    /// None while it is empty.
    stack: Option<Stack>,
    causes: usize,
}

/// A contributor of a stack. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointContributor {
    /// Its name, which no other contributor and no shared cause has.
    pub name: *const c_char,
    /// Length of the name in bytes.
    pub name_length: usize,
    /// Nominal size.
    pub nominal: f64,
    /// Lowest deviation that its limits allow.
    pub lower: f64,
    /// Highest deviation that its limits allow.
    pub upper: f64,
    /// Change of the stack for a change of this: 1 where it adds, -1 where it subtracts.
    pub coefficient: f64,
    /// How many independent pieces there are: 1 to 1000.
    pub count: usize,
    /// A GaugepointVariation.
    pub kind: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The numbers of the kind.
    pub numbers: *const f64,
    /// How many numbers there are.
    pub number_count: usize,
}

/// The published forms of a stack; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointStackForms {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `modified_factor` is given, else 0: fewer than two pieces, or none has limits.
    pub has_modified_factor: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Size at nominal.
    pub nominal: f64,
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub standard_deviation: f64,
    /// Lower end of the worst case: all contributors at their limits at once.
    pub worst_case_lower: f64,
    /// Its upper end.
    pub worst_case_upper: f64,
    /// Lower end by the root of the sum of squares of the limits.
    pub root_sum_square_lower: f64,
    /// Its upper end.
    pub root_sum_square_upper: f64,
    /// The same times Bender's 1.5, lower end.
    pub bender_lower: f64,
    /// Its upper end.
    pub bender_upper: f64,
    /// The same times the modified factor, lower end.
    pub modified_lower: f64,
    /// Its upper end.
    pub modified_upper: f64,
    /// Factor of the modified root-sum-square.
    pub modified_factor: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointStackForms {
    const SMALLEST: usize = 112;
}

/// What tolerances of least cost must reach.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointWanted {
    /// At most this probability outside the limits, from the exact distribution; 1 ppm is 1e-6.
    Outside = 1,
    /// At least this Cpk, from mean and standard deviation.
    Cpk = 2,
}

/// Cost of a contributor over its tolerance t, half the distance of its limits: fixed + factor / t^power. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointToleranceCost {
    /// Place of the contributor.
    pub place: usize,
    /// Cost that does not depend on the tolerance.
    pub fixed: f64,
    /// Factor of the part that does, above 0.
    pub factor: f64,
    /// Power of the tolerance, 0.1 to 10: 1 the reciprocal, 2 the reciprocal squared.
    pub power: f64,
    /// Smallest tolerance that can be made.
    pub least: f64,
    /// Largest that is allowed.
    pub most: f64,
}

/// Tolerances of least cost, verified, without the tolerances; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointAllocation {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Sum of the costs.
    pub cost: f64,
    /// Change of the cost for a change of the logarithm of what is wanted; 0 when every tolerance is the largest allowed.
    pub price: f64,
    /// Probability below the lower limit with these tolerances, computed anew.
    pub below: f64,
    /// Probability above the upper limit.
    pub above: f64,
    /// Bound of the relative error of both.
    pub error: f64,
    /// Parts per million outside.
    pub ppm: f64,
}

// SAFETY: a size, doubles
unsafe impl Record for GaugepointAllocation {
    const SMALLEST: usize = 56;
}

/// A share of the variance. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointShare {
    /// Place among the contributors, or among the shared causes, as they were added.
    pub place: usize,
    /// 1 for a shared cause, else 0.
    pub is_shared: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Standard deviation that it alone gives the stack.
    pub standard_deviation: f64,
    /// Its share of the variance, 0 to 1.
    pub share: f64,
}

/// Probabilities outside limits; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointTail {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Probability below the lower limit.
    pub below: f64,
    /// Probability above the upper limit.
    pub above: f64,
    /// Bound of the relative error of both.
    pub error: f64,
    /// Parts per million outside.
    pub ppm: f64,
}

// SAFETY: a size, doubles
unsafe impl Record for GaugepointTail {
    const SMALLEST: usize = 40;
}

/// Capability of a stack against limits; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointStackCapability {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// (upper - lower) / (6 sigma).
    pub cp: f64,
    /// Smaller distance of the mean from a limit over 3 sigma.
    pub cpk: f64,
    /// Probability below the lower limit, from the exact distribution.
    pub below: f64,
    /// Probability above the upper limit, from the exact distribution.
    pub above: f64,
    /// Bound of the relative error of both.
    pub error: f64,
    /// Parts per million outside.
    pub ppm: f64,
}

// SAFETY: a size, doubles
unsafe impl Record for GaugepointStackCapability {
    const SMALLEST: usize = 56;
}

/// Makes a stack of `count` contributors; of 0 an empty one, and `contributors` may be NULL.
///
/// `stack` gets it, to be freed by gaugepoint_stack_free. A refused contributor is named with its place: "contributors/2/lower".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_new(
    contributors: *const GaugepointContributor,
    count: usize,
    stack: *mut *mut GaugepointStack,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("stack", stack), || {
            let made = match count {
                0 => None,
                _ => Some(Stack::new(all(contributors, count)?)?),
            };
            Ok(handle::made(GaugepointStack { stack: made, causes: 0 }))
        })
    }
}

/// Frees a stack. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_free(stack: *mut GaugepointStack) {
    // SAFETY: it came from gaugepoint_stack_new, and was not freed
    plain((), || unsafe { freed(stack) });
}

/// Adds a contributor. On failure the stack is as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_add(
    stack: *mut GaugepointStack,
    contributor: *const GaugepointContributor,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (), || {
            let handle = lent_to_change("stack", stack)?;
            let added = contributor_of(&crate::array::given("contributor", contributor)?)?;
            handle.stack = Some(match &handle.stack {
                None => Stack::new(vec![added])?,
                Some(stack) => stack.clone().with_contributor(added)?,
            });
            Ok(())
        })
    }
}

/// Adds a cause that contributors share: each of `count` places of contributors moves by its factor times the error of the
/// cause, with all its pieces. On failure the stack is as it was.
///
/// `kind` is a GaugepointVariation that is symmetric about zero, with `number_count` numbers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_add_cause(
    stack: *mut GaugepointStack,
    name: *const c_char,
    name_length: usize,
    kind: i32,
    numbers: *const f64,
    number_count: usize,
    places: *const usize,
    factors: *const f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (), || {
            let handle = lent_to_change("stack", stack)?;
            let distribution = cause_of_kind(kind_of(kind)?, array("numbers", numbers, Some(number_count))?)?;
            let places = array("places", places, Some(count))?;
            let factors = array("factors", factors, Some(count))?;
            let stack = filled(handle)?;
            let mut named = Vec::with_capacity(count);
            for (place, factor) in places.iter().zip(factors) {
                let contributor = stack.contributors().get(*place).ok_or_else(|| {
                    Failure::refused(ErrorKind::OutOfRange, "places", "no contributor has this place")
                })?;
                named.push((contributor.name(), *factor));
            }
            handle.stack = Some(stack.clone().with_cause(
                text::name("name", name, name_length)?,
                distribution,
                &named,
            )?);
            handle.causes += 1;
            Ok(())
        })
    }
}

/// Gives the number of contributors and of shared causes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_count(
    stack: *const GaugepointStack,
    contributors: *mut usize,
    causes: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("contributors", contributors), kept("causes", causes)), || {
            let handle = lent("stack", stack)?;
            Ok((handle.stack.as_ref().map_or(0, |s| s.contributors().len()), handle.causes))
        })
    }
}

/// Worst case, root-sum-square, Bender's and the modified one, with nominal, mean and standard deviation.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_forms(
    stack: *const GaugepointStack,
    out: *mut GaugepointStackForms,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || forms(filled(stack)?)) }
}

/// Root-sum-square of the limits times a factor, 0 to 100, about the middle of the worst case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_root_sum_square(
    stack: *const GaugepointStack,
    factor: f64,
    lower: *mut f64,
    upper: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (cleared("lower", lower, f64::NAN), cleared("upper", upper, f64::NAN)), || {
            let span = filled(stack)?.root_sum_square(factor)?;
            Ok((span.lower, span.upper))
        })
    }
}

/// Shares of the variance by contributors and shared causes, largest first.
///
/// `count` gets their number, which is kept on failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_shares(
    stack: *const GaugepointStack,
    shares: *mut GaugepointShare,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("shares", shares, room), kept("count", count)), || {
            let found = filled(stack)?.shares().iter().map(GaugepointShare::from).collect();
            let found: Vec<GaugepointShare> = fitting(found, "room", room)?;
            let count = found.len();
            Ok((found, count))
        })
    }
}

/// Probabilities below `lower` and above `upper`, with a bound of their relative error. An infinite limit is no limit.
///
/// Refused when no way reaches a relative error of 1e-6.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_outside(
    stack: *const GaugepointStack,
    lower: f64,
    upper: f64,
    out: *mut GaugepointTail,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(filled(stack)?.outside(lower, upper)?.into())) }
}

/// Cp and Cpk from mean and standard deviation, and the exact probabilities outside, against two finite limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_capability(
    stack: *const GaugepointStack,
    lower: f64,
    upper: f64,
    out: *mut GaugepointStackCapability,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(filled(stack)?.capability(lower, upper)?.into())) }
}

/// The size that the stack is below with a probability between 0 and 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_quantile(
    stack: *const GaugepointStack,
    probability: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(filled(stack)?.quantile(probability)?)) }
}

/// The size that the stack is above with a probability: for a small one it keeps the digits that 1 - probability has not.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_quantile_above(
    stack: *const GaugepointStack,
    probability: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || Ok(filled(stack)?.quantile_above(probability)?))
    }
}

/// Density at each of `count` sizes, per unit of length; `densities` has room for as many.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_densities(
    stack: *const GaugepointStack,
    sizes: *const f64,
    count: usize,
    densities: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("densities", densities, count), || {
            Ok(filled(stack)?.densities(array("sizes", sizes, Some(count))?)?)
        })
    }
}

/// A density to draw: `count` sizes in equal steps between the two that leave 1e-6 outside on their side, and the density
/// at each, per unit of length. Both arrays have room for `count`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_curve(
    stack: *const GaugepointStack,
    count: usize,
    sizes: *mut f64,
    densities: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("sizes", sizes, count), array_out("densities", densities, count)), || {
            let curve = filled(stack)?.curve(count)?;
            Ok((curve.sizes, curve.densities))
        })
    }
}

/// Exact probability between each of `count` rising edges and the next; `probabilities` has room for one less.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_histogram(
    stack: *const GaugepointStack,
    edges: *const f64,
    count: usize,
    probabilities: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("probabilities", probabilities, count.saturating_sub(1)), || {
            Ok(filled(stack)?.histogram(array("edges", edges, Some(count))?)?)
        })
    }
}

/// Derivatives of the probabilities below and above two limits by the tolerance of each contributor, per unit of length, in
/// the order they were added. Both arrays have `room`; the tolerance is half the distance of the limits.
///
/// The variation keeps its form and capability: all distances from the middle of its limits change with the tolerance.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_sensitivities(
    stack: *const GaugepointStack,
    lower: f64,
    upper: f64,
    below: *mut f64,
    above: *mut f64,
    room: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("below", below, room), array_out("above", above, room)), || {
            let found = filled(stack)?.sensitivities(lower, upper)?;
            let below = fitting(found.iter().map(|s| s.below).collect(), "room", room)?;
            Ok((below, found.iter().map(|s| s.above).collect()))
        })
    }
}

/// Gives a contributor another tolerance: its limits and its variation change in the same ratio about the middle of its
/// limits. On failure the stack is as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_set_tolerance(
    stack: *mut GaugepointStack,
    place: usize,
    tolerance: f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (), || {
            let handle = lent_to_change("stack", stack)?;
            handle.stack = Some(filled(handle)?.with_tolerances(&[(place, tolerance)])?);
            Ok(())
        })
    }
}

/// Tolerances of least cost that reach what is wanted against two limits; `tolerances` has room for one for each of `count`
/// costs. Contributors without a cost keep theirs, and the stack is not changed.
///
/// `wanted` is a GaugepointWanted, and `value` the number of it. Refused when the smallest tolerances do not reach it: the
/// limits of the error say what they do reach.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_allocate(
    stack: *const GaugepointStack,
    lower: f64,
    upper: f64,
    wanted: i32,
    value: f64,
    costs: *const GaugepointToleranceCost,
    count: usize,
    tolerances: *mut f64,
    out: *mut GaugepointAllocation,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("tolerances", tolerances, count), record("out", out)), || {
            let wanted = match wanted {
                1 => Wanted::Outside(value),
                2 => Wanted::Cpk(value),
                other => return Err(Failure::choice("wanted", other, "1, 2")),
            };
            let costs: Vec<ToleranceCost> =
                array("costs", costs, Some(count))?.iter().map(ToleranceCost::from).collect();
            let made = filled(stack)?.allocate((lower, upper), wanted, &costs)?;
            let record = GaugepointAllocation::from(&made);
            Ok((made.tolerances, record))
        })
    }
}

/// The caller's stack, which has contributors.
///
/// # Safety
/// `stack` is NULL or a stack that was not freed.
pub(crate) unsafe fn filled<'a>(stack: *const GaugepointStack) -> Result<&'a Stack, Failure> {
    let none =
        || Failure::refused(ErrorKind::MissingField, "contributors", "at least one contributor is needed");
    // SAFETY: the caller's promise
    unsafe { lent("stack", stack) }?.stack.as_ref().ok_or_else(none)
}

fn kind_of(kind: i32) -> Result<VariationKind, Failure> {
    use VariationKind as K;
    Ok(match kind {
        1 => K::Normal,
        2 => K::CapabilityTowardLower,
        3 => K::CapabilityTowardUpper,
        4 => K::TruncatedNormal,
        5 => K::Rectangular,
        6 => K::Triangular,
        7 => K::Trapezoidal,
        8 => K::Arcsine,
        9 => K::Beta,
        10 => K::Skewed,
        11 => K::Sample,
        other => return Err(Failure::choice("kind", other, KINDS)),
    })
}

/// # Safety
/// As the header says.
pub(crate) unsafe fn all(
    contributors: *const GaugepointContributor,
    count: usize,
) -> Result<Vec<Contributor>, Failure> {
    // SAFETY: the caller's promise
    let given = unsafe { array("contributors", contributors, Some(count)) }?;
    let made = given.iter().enumerate().map(|(k, c)| {
        // SAFETY: the caller's promise
        unsafe { contributor_of(c) }.map_err(|failure| match failure {
            Failure::Refused(error) => Failure::Refused(error.under(&format!("contributors/{k}"))),
            other => other,
        })
    });
    made.collect()
}

/// # Safety
/// As the header says.
unsafe fn contributor_of(c: &GaugepointContributor) -> Result<Contributor, Failure> {
    // SAFETY: the caller's promise
    let (name, numbers) = unsafe {
        (text::name("name", c.name, c.name_length)?, array("numbers", c.numbers, Some(c.number_count))?)
    };
    let variation = Variation::of_kind(kind_of(c.kind)?, numbers)?;
    let pieces = u32::try_from(c.count).unwrap_or(u32::MAX);
    Ok(Contributor::new(name, c.nominal, (c.lower, c.upper), variation)?
        .with_coefficient(c.coefficient)?
        .with_count(pieces)?)
}

fn forms(stack: &Stack) -> Result<GaugepointStackForms, Failure> {
    let Span { lower: worst_case_lower, upper: worst_case_upper } = stack.worst_case();
    let Span { lower: root_sum_square_lower, upper: root_sum_square_upper } = stack.root_sum_square(1.0)?;
    let Span { lower: bender_lower, upper: bender_upper } = stack.bender();
    let Span { lower: modified_lower, upper: modified_upper } = stack.modified_root_sum_square();
    let modified_factor = stack.modified_factor();
    Ok(GaugepointStackForms {
        struct_size: size_of::<GaugepointStackForms>(),
        has_modified_factor: modified_factor.is_some().into(),
        reserved: 0,
        nominal: stack.nominal(),
        mean: stack.mean(),
        standard_deviation: stack.standard_deviation(),
        worst_case_lower,
        worst_case_upper,
        root_sum_square_lower,
        root_sum_square_upper,
        bender_lower,
        bender_upper,
        modified_lower,
        modified_upper,
        modified_factor: modified_factor.unwrap_or(f64::NAN),
    })
}

impl From<&Share> for GaugepointShare {
    fn from(s: &Share) -> Self {
        GaugepointShare {
            place: s.place,
            is_shared: s.is_shared.into(),
            reserved: 0,
            standard_deviation: s.standard_deviation,
            share: s.share,
        }
    }
}

impl From<Tail> for GaugepointTail {
    fn from(t: Tail) -> Self {
        GaugepointTail {
            struct_size: size_of::<Self>(),
            below: t.below,
            above: t.above,
            error: t.error,
            ppm: t.ppm(),
        }
    }
}

impl From<Capability> for GaugepointStackCapability {
    fn from(c: Capability) -> Self {
        GaugepointStackCapability {
            struct_size: size_of::<Self>(),
            cp: c.cp,
            cpk: c.cpk,
            below: c.tail.below,
            above: c.tail.above,
            error: c.tail.error,
            ppm: c.tail.ppm(),
        }
    }
}

impl From<&GaugepointToleranceCost> for ToleranceCost {
    fn from(c: &GaugepointToleranceCost) -> Self {
        let GaugepointToleranceCost { place, fixed, factor, power, least, most } = *c;
        ToleranceCost { place, fixed, factor, power, least, most }
    }
}

impl From<&Allocation> for GaugepointAllocation {
    fn from(a: &Allocation) -> Self {
        GaugepointAllocation {
            struct_size: size_of::<Self>(),
            cost: a.cost,
            price: a.price,
            below: a.tail.below,
            above: a.tail.above,
            error: a.tail.error,
            ppm: a.tail.ppm(),
        }
    }
}
