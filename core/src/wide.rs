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

/// Arc cosine without a branch, so that a loop over it can become vectors: operation by operation that of `libm`, and the same bits
/// (`tests/monte_carlo.rs`).
///
/// Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun Microsystems, Inc. business. Permission to
/// use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved. (FreeBSD, `e_acos.c`)
#[inline(always)]
pub(crate) fn acos(x: f64) -> f64 {
    let size = x.abs();
    let small = size < 0.5;
    let z = if small { x * x } else { (1.0 - size) * 0.5 };
    let above = z * (PS[0] + z * (PS[1] + z * (PS[2] + z * (PS[3] + z * (PS[4] + z * PS[5])))));
    let below = 1.0 + z * (QS[0] + z * (QS[1] + z * (QS[2] + z * QS[3])));
    let ratio = above / below;
    let root = z.sqrt();
    let middle = HALF_PI - (x - (HALF_PI_REST - x * ratio));
    let left = 2.0 * (HALF_PI - (root + (ratio * root - HALF_PI_REST)));
    // the upper half of the root's digits, and what its square leaves
    let head = f64::from_bits(root.to_bits() & !0xFFFF_FFFF);
    let rest = (z - head * head) / (root + head);
    let right = 2.0 * (head + (ratio * root + rest));
    let right = if size < 1.0 { right } else { 0.0 * root };
    if small {
        middle
    } else if x < 0.0 {
        left
    } else {
        right
    }
}

const HALF_PI: f64 = core::f64::consts::FRAC_PI_2;
const HALF_PI_REST: f64 = f64::from_bits(0x3C91_A626_3314_5C07);
const PS: [f64; 6] = [
    f64::from_bits(0x3FC5_5555_5555_5555),
    f64::from_bits(0xBFD4_D612_03EB_6F7D),
    f64::from_bits(0x3FC9_C155_0E88_4455),
    f64::from_bits(0xBFA4_8228_B568_8F3B),
    f64::from_bits(0x3F49_EFE0_7501_B288),
    f64::from_bits(0x3F02_3DE1_0DFD_F709),
];
const QS: [f64; 4] = [
    f64::from_bits(0xC003_3A27_1C8A_2D4B),
    f64::from_bits(0x4000_2AE5_9C59_8AC8),
    f64::from_bits(0xBFE6_066C_1B8D_0159),
    f64::from_bits(0x3FB3_B8C5_B12E_9282),
];

#[cfg(test)]
mod tests {
    /// The function of `libm` itself: every bit, over the ends, the joints, and numbers spread by the golden section of every size.
    #[test]
    fn arc_cosine_is_that_of_libm() {
        let check = |x: f64| {
            let (ours, theirs) = (super::acos(x), libm::acos(x));
            assert!(ours.to_bits() == theirs.to_bits() || (ours.is_nan() && theirs.is_nan()), "{x:e}");
        };
        // 2^-57, where it becomes flat, and the smallest number
        let (flat, least) = (f64::from_bits(0x3C60_0000_0000_0000), f64::from_bits(1));
        let joints = [0.0, 1.0, 0.5, flat, least, 1.5, f64::INFINITY, f64::NAN];
        for x in joints.into_iter().flat_map(|x| [x, x.next_up(), x.next_down()]) {
            check(x);
            check(-x);
        }
        for k in 0..2_000_000_u64 {
            let spread = (k.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 11) as f64 / 9_007_199_254_740_992.0;
            check(2.0 * spread - 1.0);
            check(spread * spread * spread * spread * 1e-3);
            check(1.0 - spread * spread * spread * 1e-6);
        }
    }
}
