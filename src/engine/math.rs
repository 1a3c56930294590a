//! Functions whose last bits IEEE 754 leaves open and the standard library takes from the system: here they come from
//! `libm`, so that a test and every browser get the same, to the last bit. A square root is fixed and needs none of this.

/// The sine of an angle in radians.
pub fn sine(angle: f64) -> f64 {
    libm::sin(angle)
}

/// The cosine of an angle in radians.
pub fn cosine(angle: f64) -> f64 {
    libm::cos(angle)
}

/// The tangent of an angle in radians.
pub fn tangent(angle: f64) -> f64 {
    libm::tan(angle)
}

/// The angle in radians, from -π/2 to π/2, that has this sine.
pub fn arcsine(sine: f64) -> f64 {
    libm::asin(sine)
}

/// The angle in radians, from -π/2 to π/2, that has this tangent.
pub fn arctangent(tangent: f64) -> f64 {
    libm::atan(tangent)
}

/// The angle in radians, from -π to π, of the point that lies so far up and so far along.
pub fn direction(up: f64, along: f64) -> f64 {
    libm::atan2(up, along)
}

/// The natural logarithm.
pub fn logarithm(value: f64) -> f64 {
    libm::log(value)
}

/// The logarithm to base 10.
pub fn decimal_logarithm(value: f64) -> f64 {
    libm::log10(value)
}

/// A value to a power.
pub fn power(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// The cube root.
pub fn cube_root(value: f64) -> f64 {
    libm::cbrt(value)
}

/// A value times itself.
pub const fn squared(value: f64) -> f64 {
    value * value
}

/// A value to the third power.
pub const fn cubed(value: f64) -> f64 {
    value * value * value
}

/// A value to the fourth power.
pub const fn fourth(value: f64) -> f64 {
    squared(squared(value))
}
