//! Natural numbers of any size, as far as reading and writing an `f64` needs them.

use std::cmp::Ordering;

/// A natural number: its lowest 32 bits first, no zeros last.
pub(super) struct Long(Vec<u32>);

impl From<u64> for Long {
    fn from(whole: u64) -> Self {
        let mut long = Self(vec![whole as u32, (whole >> 32) as u32]);
        long.trim();
        long
    }
}

impl Long {
    /// Decimal digits, the first one first, none above 9.
    pub(super) fn of(digits: &[u8]) -> Self {
        let mut long = Self(Vec::new());
        digits.iter().for_each(|digit| long.times_plus(10, u32::from(*digit)));
        long
    }

    /// Multiplies it, then adds to it.
    pub(super) fn times_plus(&mut self, factor: u32, more: u32) {
        let mut carry = u64::from(more);
        for word in &mut self.0 {
            carry += u64::from(*word) * u64::from(factor);
            *word = carry as u32;
            carry >>= 32;
        }
        if carry > 0 {
            self.0.push(carry as u32);
        }
    }

    /// Multiplies it by a power of two that is not negative.
    pub(super) fn shift(&mut self, power: i64) {
        for _ in 0..power / 16 {
            self.times_plus(1 << 16, 0);
        }
        self.times_plus(1 << (power % 16), 0);
    }

    /// How many bits it takes; none for zero.
    pub(super) fn bit_length(&self) -> i64 {
        let words = self.0.len() as i64;
        words * 32 - self.0.last().map_or(0, |last| i64::from(last.leading_zeros()))
    }

    /// Whether it is zero.
    pub(super) fn is_zero(&self) -> bool {
        self.0.is_empty()
    }

    /// Whether another one is larger.
    pub(super) fn less_than(&self, other: &Self) -> bool {
        let longer = self.0.len().cmp(&other.0.len());
        longer.then_with(|| self.0.iter().rev().cmp(other.0.iter().rev())) == Ordering::Less
    }

    /// Takes another one away that is not larger.
    pub(super) fn minus(&mut self, other: &Self) {
        let mut borrow = 0;
        for (at, word) in self.0.iter_mut().enumerate() {
            let taken = u64::from(other.0.get(at).copied().unwrap_or(0)) + borrow;
            borrow = u64::from(u64::from(*word) < taken);
            *word = (u64::from(*word) + (borrow << 32) - taken) as u32;
        }
        self.trim();
    }

    /// Divides it by a number that is not zero, and gives the remainder.
    pub(super) fn divide_for_remainder(&mut self, by: u32) -> u32 {
        let mut left = 0;
        for word in self.0.iter_mut().rev() {
            left = (left << 32) | u64::from(*word);
            *word = (left / u64::from(by)) as u32;
            left %= u64::from(by);
        }
        self.trim();
        left as u32
    }

    fn trim(&mut self) {
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
    }
}
