/// The law that lives in the sample follow. A unit ages by x(t), the integral of
/// share * exp(beta . z) from its issue, and wears out when x reaches X, with
/// P(X > x) = exp(-Z (x / scale)^shape) and Z ~ Gamma(1/theta, 1/theta) for each patient and kind.
/// The figures are invented to be plausible; they come from no publication.
#pragma once

#include <array>

#include "clinic/patient.hpp"
#include "clinic/words.hpp"
#include "random.hpp"

namespace sparewell::sample {

struct Law {
  double shape;
  double scale_days;  ///< days of reference use
  double theta;       ///< variance of Z
};

[[nodiscard]] Law law_of(Kind kind, Material material);

/// Days of wear for one day with the part: exp(beta . z). z is zero at K2, no kneeling, 12 hours a
/// day, normal sweating and no impact sport; fields of `usage` that are empty count as zero.
[[nodiscard]] double wear_rate(Kind kind, const Usage& usage);

/// What a part of this kind shows when it is worn out.
[[nodiscard]] EndReason wear_reason(Kind kind, Random& random);

}  // namespace sparewell::sample
