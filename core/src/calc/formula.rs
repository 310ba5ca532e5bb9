//! A formula is written once; its value, its derivatives and its printed text come from that one text.

use super::expression::Expression;
use super::number::Number;
use core::any::TypeId;
use core::array;
use core::ops::{Add, Div, Mul, Sub};

/// A formula of `N` arguments.
pub trait Formula<const N: usize>: 'static {
    /// Symbol of the result.
    const SYMBOL: &'static str;
    /// Unit of the result.
    const UNIT: &'static str;
    /// Symbols of the arguments.
    const ARGUMENTS: [&'static str; N];
    /// Where the formula comes from.
    const SOURCE: &'static str;

    /// The formula itself.
    fn evaluate<T: Number>(arguments: [T; N]) -> T
    where
        f64: Add<T, Output = T> + Sub<T, Output = T> + Mul<T, Output = T> + Div<T, Output = T>;
}

/// A formula as data: what is printed is printed by the same code for all of them.
pub(super) struct Form {
    pub(super) id: fn() -> TypeId,
    pub(super) symbol: &'static str,
    pub(super) unit: &'static str,
    pub(super) arguments: &'static [&'static str],
    pub(super) source: &'static str,
    /// the formula of its arguments by number
    pub(super) evaluate: for<'s, 'a> fn(&'a dyn Fn(usize) -> Expression<'s>) -> Expression<'s>,
}

impl Form {
    pub(super) fn of<F: Formula<N>, const N: usize>() -> &'static Self {
        const {
            &Form {
                id: TypeId::of::<F>,
                symbol: F::SYMBOL,
                unit: F::UNIT,
                arguments: &F::ARGUMENTS,
                source: F::SOURCE,
                evaluate: |argument| F::evaluate(array::from_fn(argument)),
            }
        }
    }
}

/// Declares formulas:
///
/// ```text
/// formula! {
///     /// What it is.
///     NAME: symbol [unit] = (a, b) => a * b; source "where it comes from";
/// }
/// ```
macro_rules! formula {
    ($($(#[$doc:meta])* $name:ident: $symbol:ident [$unit:literal] =
        ($($argument:ident),+) => $body:expr; source $source:literal;)+) => {
        $(
            $(#[$doc])*
            #[doc = concat!("\n\n`", stringify!($symbol), " = ", stringify!($body), "` in ", $unit, ". Source: ", $source, ".")]
            #[derive(Debug, Clone, Copy)]
            pub(crate) struct $name;

            impl $crate::calc::Formula<{ [$(stringify!($argument)),+].len() }> for $name {
                const SYMBOL: &'static str = stringify!($symbol);
                const UNIT: &'static str = $unit;
                const ARGUMENTS: [&'static str; { [$(stringify!($argument)),+].len() }] = [$(stringify!($argument)),+];
                const SOURCE: &'static str = $source;

                fn evaluate<T: $crate::calc::Number>(
                    [$($argument),+]: [T; { [$(stringify!($argument)),+].len() }],
                ) -> T
                where
                    f64: core::ops::Add<T, Output = T>
                        + core::ops::Sub<T, Output = T>
                        + core::ops::Mul<T, Output = T>
                        + core::ops::Div<T, Output = T>,
                {
                    $body
                }
            }
        )+
    };
}
pub(crate) use formula;
