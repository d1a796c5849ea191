/// How hard a patient uses their parts over the years.
#pragma once

#include <vector>

#include "people.hpp"

namespace sparewell::sample {

/// Rows dated from `joined` to `until`: a first one, then changes of job, summers, sport, recovery.
[[nodiscard]] std::vector<Usage> make_usage(const PatientRef& patient, Date joined, Date until,
                                            Random& random);

}  // namespace sparewell::sample
