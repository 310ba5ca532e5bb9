//! The floating-point state of a host, put aside while the library computes.
//!
//! A host may unmask exceptions of the hardware, round otherwise, or flush small numbers to zero. The compiler knows of none of that: where it is faster
//! it computes both sides of a choice, and a division that no line of the source asks for would kill the process; and other rounding gives other bits.

use core::hint::black_box;

/// Runs `body` in the state that the compiler counts on, and puts the caller's back as it was, with its flags.
#[inline(always)]
pub(crate) fn aside<T>(body: impl FnOnce() -> T) -> T {
    let own = Own::taken();
    if !own.is_usual() {
        state::write(state::USUAL);
    }
    // nothing that is computed moves across either end
    let made = black_box(black_box(body)());
    own.put_back();
    made
}

/// The caller's state.
pub(crate) struct Own(state::Bits);

impl Own {
    #[inline(always)]
    pub(crate) fn taken() -> Self {
        Own(state::read())
    }

    /// Whether it is that which the compiler counts on.
    #[inline(always)]
    pub(crate) fn is_usual(&self) -> bool {
        state::without_flags(self.0) == state::USUAL
    }

    /// As it was, with the flags of exceptions: some hosts look at them. That something was rounded is no exception worth the time.
    #[inline(always)]
    pub(crate) fn put_back(&self) {
        if (state::read() ^ self.0) & !state::ROUNDED != 0 {
            state::write(self.0);
        }
    }
}

#[cfg(target_arch = "x86_64")]
#[allow(unsafe_code, reason = "no safe function reads or writes the register")]
mod state {
    use core::arch::asm;

    pub(super) type Bits = u32;
    /// Rounds to the nearest, all exceptions masked, nothing is flushed.
    pub(super) const USUAL: Bits = 0x1F80;
    pub(super) const ROUNDED: Bits = 0x20;

    pub(super) fn without_flags(state: Bits) -> Bits {
        state & !0x3F
    }

    #[inline(always)]
    pub(super) fn read() -> Bits {
        let mut state: Bits = 0;
        // SAFETY: it writes 32 bits into a place of 32 bits
        unsafe { asm!("stmxcsr [{}]", in(reg) &raw mut state, options(nostack, preserves_flags)) };
        state
    }

    #[inline(always)]
    pub(super) fn write(state: Bits) {
        // SAFETY: it is a state that was read, or the usual one, which is put back before anything else runs
        unsafe { asm!("ldmxcsr [{}]", in(reg) &raw const state, options(nostack, preserves_flags)) };
    }
}

#[cfg(target_arch = "aarch64")]
#[allow(unsafe_code, reason = "no safe function reads or writes the register")]
mod state {
    use core::arch::asm;

    // rounds to the nearest, all exceptions masked, nothing is flushed; the flags are in another register
    pub(super) type Bits = u64;
    pub(super) const USUAL: Bits = 0;
    pub(super) const ROUNDED: Bits = 0;

    pub(super) fn without_flags(state: Bits) -> Bits {
        state
    }

    #[inline(always)]
    pub(super) fn read() -> Bits {
        let state;
        // SAFETY: it reads a register
        unsafe { asm!("mrs {}, fpcr", out(reg) state, options(nomem, nostack, preserves_flags)) };
        state
    }

    #[inline(always)]
    pub(super) fn write(state: Bits) {
        // SAFETY: it is a state that was read, or the usual one, which is put back before anything else runs
        unsafe { asm!("msr fpcr, {}", in(reg) state, options(nostack, preserves_flags)) };
    }
}

/// Where the register is not known the caller's state stays.
#[cfg(not(any(target_arch = "x86_64", target_arch = "aarch64")))]
mod state {
    pub(super) type Bits = u8;
    pub(super) const USUAL: Bits = 0;
    pub(super) const ROUNDED: Bits = 0;

    pub(super) fn without_flags(state: Bits) -> Bits {
        state
    }

    pub(super) fn read() -> Bits {
        USUAL
    }

    pub(super) fn write(_: Bits) {}
}
