//! Signs of damage: what may be behind a finding, and what to ask.

use crate::array::{array_out, fitting, rows};
use crate::error::{Failure, GaugepointError};
use crate::guard::{plain, status};
use crate::record::{Record, record};
use crate::status::{Text, terminated};
use crate::text::flag;
use core::ffi::c_char;
use gaugepoint::decision::finding::{Place, What};
use gaugepoint::decision::signs::{self, Candidate, Cause, Group, Question, SIGNS};

/// Where a finding was made.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPlace {
    /// Top of the piston.
    Crown = 1,
    /// Land above the top ring.
    TopLand = 2,
    /// Land between rings.
    RingLand = 3,
    /// Groove of a ring.
    RingGroove = 4,
    /// Skirt.
    Skirt = 5,
    /// Boss of the pin.
    PinBoss = 6,
    /// Bore of the pin.
    PinBore = 7,
    /// Retaining ring and its groove.
    PinRetention = 8,
    /// Wall of the bore.
    BoreWall = 9,
    /// Underside of the crown.
    CrownUnderside = 10,
    /// A ring.
    Ring = 11,
    /// Edges and bridges of ports.
    Ports = 12,
    /// Outside of a liner.
    LinerOutside = 13,
    /// Flange of a liner.
    LinerFlange = 14,
    /// Connecting rod.
    Rod = 15,
}

/// What was seen.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointWhat {
    /// Carbon.
    Carbon = 1,
    /// Scuffing: smeared metal along the stroke.
    Scuffing = 2,
    /// Scoring: single grooves along the stroke.
    Scoring = 3,
    /// Seizure: torn and welded metal.
    Seizure = 4,
    /// A crack.
    Crack = 5,
    /// A wear path that runs diagonally.
    DiagonalWear = 6,
    /// Coating worn through.
    CoatingWorn = 7,
    /// Coating flaking off.
    CoatingFlaking = 8,
    /// Melted or pitted metal.
    Erosion = 9,
    /// Marks of a blow.
    Impact = 10,
    /// A widened or stepped ring groove.
    GrooveWear = 11,
    /// A retaining ring that is loose or gone.
    RetainingRingLoose = 12,
    /// A ring that does not move in its groove.
    RingStuck = 13,
    /// Dull wear over an area.
    MattWear = 14,
    /// A piece broken out.
    Fracture = 15,
    /// A hole.
    Hole = 16,
    /// A bright, polished area.
    Polish = 17,
    /// Pits.
    Pitting = 18,
    /// Brown or blue from heat.
    Discolouration = 19,
    /// Bent metal.
    Bend = 20,
}

/// What is asked about a finding.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointQuestion {
    /// Are both thrust faces marked alike?
    BothFaces = 1,
    /// Is the ring zone clean?
    RingZoneClean = 2,
    /// Did it come within the first hours after a rebuild?
    SoonAfterRebuild = 3,
    /// Is the metal dark, smeared or torn (no: bright and only polished)?
    DarkAndTorn = 4,
    /// Do the marks lie half-way between the boss and the middle of the panel?
    AtFortyFive = 5,
    /// Is it heaviest at the crown and lighter toward the skirt?
    FromTheCrown = 6,
    /// Is the bottom edge alone marked?
    LowerEdgeAlone = 7,
    /// Was the engine loaded before it was warm?
    LoadedCold = 8,
    /// Does the pin turn freely in its boss?
    PinTurnsFreely = 9,
    /// Is the deposit wet or oily?
    Oily = 10,
    /// Is one side much heavier than the other?
    OneSided = 11,
    /// Is coating or tin still there in the lows of the marks?
    CoatingInTheLows = 12,
    /// Was coolant short or the flow blocked?
    CoolantShort = 13,
    /// Was oil short, or its jet or gallery blocked?
    OilShort = 14,
    /// Is there grit in the oil, the filter or the intake?
    GritFound = 15,
    /// Is the oil thinned by fuel, or did the cylinder misfire?
    FuelInOil = 16,
    /// Is the broken or melted edge pitted, as if it had been blasted with sand?
    PittedEdge = 17,
    /// Is the surface that melted smooth?
    SmoothMelt = 18,
    /// Was the engine run for long above its load?
    Overloaded = 19,
    /// Is the mark the shape of a valve or of the head?
    ShapeOfValve = 20,
    /// Does the bore measure out of shape with the plate on and in shape without it, or the other way?
    ShapeByClamping = 21,
    /// Does this piston stand lower than the others at top dead centre?
    StandsLow = 22,
    /// Was a retaining ring used again, or of another pattern?
    RingUsedAgain = 23,
    /// Is the rod bent or twisted by its gauge?
    RodBent = 24,
    /// Is the piston forged?
    Forged = 25,
    /// Is the pin pressed into the rod?
    PinPressed = 26,
    /// Is the pin held by retaining rings?
    PinInRetainingRings = 27,
    /// Has the skirt struts of steel cast in?
    SkirtStrutted = 28,
    /// Is the alloy hypereutectic?
    Hypereutectic = 29,
}

/// What a cause is about.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointGroup {
    /// No fault.
    Normal = 1,
    /// Too little room, or room in the wrong place.
    Clearance = 2,
    /// No film of oil.
    Lubrication = 3,
    /// Too hot.
    Heat = 4,
    /// Fuel, ignition, injection.
    Combustion = 5,
    /// Grit and broken pieces.
    Dirt = 6,
    /// Parts that do not stand true.
    Alignment = 7,
    /// Work that was done wrongly.
    Assembly = 8,
    /// Load and fatigue.
    Load = 9,
    /// Worn parts.
    Wear = 10,
    /// Corrosion and cavitation.
    Corrosion = 11,
}

/// A cause of damage.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointCause {
    /// Running as it should.
    NormalRunning = 1,
    /// Running-in.
    RunningIn = 2,
    /// A coating that is made to wear to shape.
    CoatingWearsToShape = 3,
    /// Oil comes past rings or guides.
    OilPastRingsOrGuides = 4,
    /// One ring or one guide lets oil through.
    OneRingOrGuide = 5,
    /// Gas blows past the rings.
    BlowBy = 6,
    /// The piston ran too hot.
    PistonTooHot = 7,
    /// Long idling, or an oil that cokes.
    IdlingOrOil = 8,
    /// Service wear of the coating.
    CoatingWorn = 9,
    /// The coating was not bonded.
    CoatingNotBonded = 10,
    /// The bore is too small for the piston.
    BoreTooSmall = 11,
    /// Bolts, plate, gasket or liner seat pull the bore out of shape.
    BorePulledByClamping = 12,
    /// The bore is tight at its bottom.
    BoreTightBelow = 13,
    /// The skirt has the wrong ovality.
    WrongOvality = 14,
    /// The piston grew before the bore did.
    LoadedBeforeWarm = 15,
    /// Struts hold the skirt where it should give.
    SkirtHeldByStruts = 16,
    /// The pin is tight in its boss.
    PinTight = 17,
    /// The pin got no oil.
    PinDry = 18,
    /// The press fit of the pin squeezes the boss or the rod eye.
    PressFitTooTight = 19,
    /// The boss region ran too hot.
    BossTooHot = 20,
    /// The oil film broke at one place: jet, gallery, level.
    OilFilmLost = 21,
    /// The whole engine lost its oil.
    OilLost = 22,
    /// Fuel washed the oil off the wall.
    FuelWash = 23,
    /// Cooling failed at one place.
    LocalCooling = 24,
    /// The whole engine lost its coolant.
    CoolantLost = 25,
    /// Mixture, timing or load made the crown too hot.
    CrownTooHot = 26,
    /// Knock.
    Knock = 27,
    /// Ignition by a hot spot.
    PreIgnition = 28,
    /// Late or dribbling injection.
    InjectionFault = 29,
    /// Abrasive dirt in the oil.
    GritInOil = 30,
    /// Pieces or dust between ring and wall.
    PiecesOrDust = 31,
    /// A bent or twisted rod.
    RodBentOrTwisted = 32,
    /// A bore that is not square to the crankshaft.
    BoreNotSquare = 33,
    /// A force along the pin.
    ForceAlongPin = 34,
    /// A wrong or used retaining ring.
    WrongRetainingRing = 35,
    /// A valve or the head met the piston.
    MetValveOrHead = 36,
    /// Overload.
    Overload = 37,
    /// Cracks by heat and cold in turn.
    ThermalFatigue = 38,
    /// Cracks by load cycles.
    LoadFatigue = 39,
    /// A brittle alloy that was struck or knocked.
    BrittleAlloy = 40,
    /// Rings that were loose in their grooves.
    LooseRings = 41,
    /// Cavitation of the coolant.
    Cavitation = 42,
    /// Wrong protrusion of the liner, or a dirty seat.
    LinerSeat = 43,
    /// The cooling jet is missing or misses.
    JetMissing = 44,
    /// The bridge between the ports was not relieved.
    BridgeNotRelieved = 45,
    /// Fuel, coolant or oil filled the cylinder.
    LiquidLock = 46,
}

/// Room for the candidates of any finding.
pub const GAUGEPOINT_MOST_CANDIDATES: usize = 32;
/// Room for the questions of any finding.
pub const GAUGEPOINT_MOST_QUESTIONS: usize = 32;

/// A cause that agrees with what was seen and answered. A plain structure; its texts live for ever.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCandidate {
    /// A GaugepointCause.
    pub cause: i32,
    /// A GaugepointGroup.
    pub group: i32,
    /// 1 when every answer that it needs was given, else 0.
    pub confirmed: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The cause in words.
    pub text: *const c_char,
    /// Word of the sign it comes from.
    pub sign: *const c_char,
    /// What to look at next.
    pub check_next: *const c_char,
}

/// What may be behind a finding; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointExplanation {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of candidates.
    pub candidate_count: usize,
    /// Number of questions that are open.
    pub ask_count: usize,
    /// 1 when `cause` is given, else 0: answers have left one candidate, and it is confirmed.
    pub has_cause: i32,
    /// A GaugepointCause; 0 when it is not given.
    pub cause: i32,
}

// SAFETY: a size, two counts and two numbers of four bytes
unsafe impl Record for GaugepointExplanation {
    const SMALLEST: usize = 32;
}

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn questions() -> [Text; Question::ALL.len()] {
    let (mut out, mut k) = ([[0; 160]; Question::ALL.len()], 0);
    while k < out.len() {
        out[k] = terminated(Question::ALL[k].meaning());
        k += 1;
    }
    out
}

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn causes() -> [Text; Cause::ALL.len()] {
    let (mut out, mut k) = ([[0; 160]; Cause::ALL.len()], 0);
    while k < out.len() {
        out[k] = terminated(Cause::ALL[k].meaning());
        k += 1;
    }
    out
}

/// Word and what to look at next.
#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn of_signs() -> [[Text; 2]; SIGNS.len()] {
    let (mut out, mut k) = ([[[0; 160]; 2]; SIGNS.len()], 0);
    while k < out.len() {
        out[k] = [terminated(SIGNS[k].word), terminated(SIGNS[k].check_next)];
        k += 1;
    }
    out
}

static QUESTIONS: [Text; Question::ALL.len()] = questions();
static CAUSES: [Text; Cause::ALL.len()] = causes();
static OF_SIGNS: [[Text; 2]; SIGNS.len()] = of_signs();

/// Gives the causes that agree with a finding by eye and with the answers so far, and what to ask next.
///
/// `place` is a GaugepointPlace, `what` a GaugepointWhat. `questions` has `count` different GaugepointQuestion, `answers` 1 for yes
/// and 0 for no to each; both may be NULL when `count` is 0. `candidates` has room for `room` causes, GAUGEPOINT_MOST_CANDIDATES are always
/// enough; those that are confirmed come first. `ask` has room for `ask_room` numbers, GAUGEPOINT_MOST_QUESTIONS are always enough, and gets
/// what is still open: first the question on which most candidates depend.
///
/// Common practice of the trade, no source. No candidate is no clearance: then the catalogue does not know what was seen.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_explain(
    place: i32,
    what: i32,
    questions: *const i32,
    answers: *const i32,
    count: usize,
    candidates: *mut GaugepointCandidate,
    room: usize,
    ask: *mut i32,
    ask_room: usize,
    out: *mut GaugepointExplanation,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (array_out("candidates", candidates, room), array_out("ask", ask, ask_room)),
                record("out", out),
            ),
            || {
                let (place, what) = (one_of("place", Place::ALL, place)?, one_of("what", What::ALL, what)?);
                let questions = rows("questions", questions, count)?;
                let given = questions.iter().zip(rows("answers", answers, count)?).enumerate();
                let given: Result<Vec<_>, Failure> = given.map(|(k, pair)| answered(k, pair)).collect();
                let found = signs::explain(place, what, &given?)?;
                let summary = GaugepointExplanation {
                    struct_size: size_of::<GaugepointExplanation>(),
                    candidate_count: found.candidates.len(),
                    ask_count: found.ask.len(),
                    has_cause: found.cause_found().into(),
                    cause: found.cause().map_or(0, |cause| number(Cause::ALL, cause)),
                };
                let candidates = found.candidates.iter().map(GaugepointCandidate::from).collect();
                let ask = found.ask.iter().map(|q| number(Question::ALL, *q)).collect();
                Ok(((fitting(candidates, "room", room)?, fitting(ask, "ask_room", ask_room)?), summary))
            },
        )
    }
}

/// A GaugepointQuestion in words; empty for another number.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_question_text(question: i32) -> *const c_char {
    plain(c"".as_ptr(), || at(question).and_then(|k| QUESTIONS.get(k)).map_or(c"".as_ptr(), text))
}

fn text(text: &'static Text) -> *const c_char {
    text.as_ptr().cast()
}

fn answered(k: usize, (question, answer): (&i32, &i32)) -> Result<(Question, bool), Failure> {
    let at = k.to_string();
    let question = one_of(&at, Question::ALL, *question).map_err(|f| f.under("questions"))?;
    // a flag has no place of its own
    Ok((question, flag("", *answer).map_err(|f| f.under(&format!("answers/{at}")))?))
}

/// The numbers of an enumeration are the places of its words, from 1.
fn at(number: i32) -> Option<usize> {
    usize::try_from(number).ok()?.checked_sub(1)
}

fn one_of<T: Copy>(field: &str, all: &[T], number: i32) -> Result<T, Failure> {
    let found = at(number).and_then(|k| all.get(k)).copied();
    found.ok_or_else(|| Failure::choice("", number, &format!("1 to {}", all.len())).under(field))
}

/// The number of a choice: its place among all, from 1.
pub(crate) fn number<T: PartialEq>(all: &[T], one: T) -> i32 {
    let at = all.iter().position(|other| *other == one);
    at.and_then(|k| i32::try_from(k + 1).ok()).unwrap_or_default()
}

impl From<&Candidate> for GaugepointCandidate {
    fn from(c: &Candidate) -> Self {
        let cause = number(Cause::ALL, c.cause);
        let of_sign = SIGNS.iter().zip(&OF_SIGNS).find(|(sign, _)| sign.word == c.sign);
        let of_sign = |k: usize| of_sign.and_then(|(_, texts)| texts.get(k)).map_or(c"".as_ptr(), text);
        GaugepointCandidate {
            cause,
            group: number(Group::ALL, c.group),
            confirmed: c.confirmed.into(),
            reserved: 0,
            text: at(cause).and_then(|k| CAUSES.get(k)).map_or(c"".as_ptr(), text),
            sign: of_sign(0),
            check_next: of_sign(1),
        }
    }
}
