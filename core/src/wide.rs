//! Wider vectors where the machine has them: the same code compiled twice, chosen when it runs.
//!
//! Only `+ - * /`, `sqrt`, comparisons and integers are computed, lane by lane and never fused, so that both ways give the same bits. The
//! choice is made by the crate `pulp`, whose interface is safe; where it knows no wider vectors the baseline runs.

use pulp::{Arch, Simd, WithSimd};

/// Which instructions a computation over columns uses; its results do not depend on it.
#[derive(Debug, Clone, Copy)]
pub struct Width(Arch);

/// Code that is compiled for every width: all it calls must be inlined.
pub(crate) trait Columnar {
    /// Does it.
    fn run(self);
}

impl Width {
    /// What every machine of this kind has.
    #[must_use]
    pub fn baseline() -> Self {
        Width(Arch::Scalar)
    }

    /// The widest that this machine has.
    #[must_use]
    pub fn detected() -> Self {
        Width(Arch::new())
    }

    /// Whether it is more than the baseline.
    #[must_use]
    pub fn is_wide(self) -> bool {
        !matches!(self.0, Arch::Scalar)
    }

    pub(crate) fn run(self, columnar: impl Columnar) {
        self.0.dispatch(Widened(columnar));
    }
}

struct Widened<C>(C);

impl<C: Columnar> WithSimd for Widened<C> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        self.0.run();
    }
}
