#![forbid(unsafe_code)]
#![doc = include_str!("../docs/overview.md")]

#[macro_use]
extern crate uom;

mod choice;

pub mod error;

pub mod progress;

pub mod quantity;

pub mod bounds;

pub mod calc;

pub mod special;

mod quadrature;

mod order;

pub mod wide;

pub mod job;

pub mod sheet;

pub mod measurement;

pub mod size;

pub mod shape;

pub mod growth;

pub mod clearance;

pub mod decision;

pub mod stack;

pub mod plan;

pub mod report;

pub mod assess;

pub mod measure;

pub mod fit;

pub mod revisit;

pub mod what_if;

pub mod budget;

pub mod flat;

pub mod batch;

pub use assess::{Options, assess, assess_json, assess_json_bytes, assess_watched};
pub use error::{Error, ErrorKind};
pub use job::Document;
pub use report::Report;
pub use revisit::{revisit, revisit_json, revisit_json_bytes};
pub use what_if::{what_if, what_if_json, what_if_json_bytes};

/// The code of the README, run as tests.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct Readme;
