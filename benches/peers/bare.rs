//! Functions of doubles that do nothing but add, for flat.py: what a call from Python costs at least.

use pyo3::prelude::*;

macro_rules! bare {
    ($($name:ident($($parameter:ident)+);)+) => {
        $(#[pyfunction]
        #[allow(clippy::too_many_arguments)]
        fn $name($($parameter: f64),+) -> f64 {
            0.0 $(+ $parameter)+
        })+

        #[pymodule]
        fn bare(module: &Bound<'_, PyModule>) -> PyResult<()> {
            $(module.add_function(wrap_pyfunction!($name, module)?)?;)+
            Ok(())
        }
    };
}

bare! {
    of_1(a);
    of_2(a b);
    of_3(a b c);
    of_4(a b c d);
    of_5(a b c d e);
    of_6(a b c d e f);
    of_7(a b c d e f g);
    of_8(a b c d e f g h);
    of_9(a b c d e f g h i);
    of_10(a b c d e f g h i j);
    of_11(a b c d e f g h i j k);
}
