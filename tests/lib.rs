//! The suite that every host runs: what its parts share.
