//! Natural numbers of any size, as far as reading and writing an `f64` needs them.

/// A natural number of any size, its lowest 32 bits first.
pub(super) struct Long(Vec<u32>);

impl From<u64> for Long {
    fn from(whole: u64) -> Self {
        let mut words = vec![whole as u32, (whole >> 32) as u32];
        while words.last() == Some(&0) {
            words.pop();
        }
        Self(words)
    }
}

impl Long {
    pub(super) fn of(digits: &[u8]) -> Self {
        let mut long = Self(Vec::new());
        digits.iter().for_each(|digit| long.times_plus(10, u32::from(*digit)));
        long
    }

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

    pub(super) fn shift(&mut self, places: i64) {
        for _ in 0..places / 16 {
            self.times_plus(1 << 16, 0);
        }
        self.times_plus(1 << (places % 16), 0);
    }

    pub(super) fn bits(&self) -> i64 {
        let words = self.0.len() as i64;
        words * 32 - self.0.last().map_or(0, |last| i64::from(last.leading_zeros()))
    }

    pub(super) fn is_some(&self) -> bool {
        !self.0.is_empty()
    }

    pub(super) fn less_than(&self, other: &Self) -> bool {
        let longer = self.0.len().cmp(&other.0.len());
        longer.then_with(|| self.0.iter().rev().cmp(other.0.iter().rev())).is_lt()
    }

    /// Takes a smaller number away.
    pub(super) fn minus(&mut self, other: &Self) {
        let mut borrow = 0;
        for (at, word) in self.0.iter_mut().enumerate() {
            let taken = u64::from(other.0.get(at).copied().unwrap_or(0)) + borrow;
            borrow = u64::from(u64::from(*word) < taken);
            *word = (u64::from(*word) + (borrow << 32) - taken) as u32;
        }
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
    }

    /// Divides by a small number, and tells what is left over.
    pub(super) fn divide(&mut self, by: u32) -> u32 {
        let mut left = 0;
        for word in self.0.iter_mut().rev() {
            left = (left << 32) | u64::from(*word);
            *word = (left / u64::from(by)) as u32;
            left %= u64::from(by);
        }
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
        left as u32
    }
}
