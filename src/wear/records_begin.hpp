/// From when on a clinic's records are complete.
#pragma once

#include <optional>

#include "clinic/clinic.hpp"
#include "wear/kind_life.hpp"

namespace sparewell::wear {

/// More wear endings than this expected before the first recorded ending, none of them recorded,
/// say that the records begin later: by chance alone that happens once in a thousand clinics.
inline constexpr double endings_that_must_show = 7;

/// The day at whose end the records begin, where the records themselves say that units were already
/// in use then and that those which had ended were left out; empty when there is no sign of that.
///
/// The candidate is the day of the first ending of all. It is a stopping time: counting lives from
/// there on is right whether or not earlier endings were left out, and only costs what could have
/// been learned before. So it is only used when, by the law `fitted` without it, more than
/// endings_that_must_show wear endings had to be expected until then; that law overrates lives when
/// earlier endings are missing, which makes the test careful. The number expected at each
/// cumulative hazard H is log(1 + theta H) / theta, mixed over the person's multiplier.
[[nodiscard]] std::optional<Date> suspected_records_begin(const Clinic& clinic,
                                                          const ClinicLife& fitted, Date today);

}  // namespace sparewell::wear
