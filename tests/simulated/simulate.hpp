/// A clinic made by a known law, with what its records cannot tell: when each unit in use will be
/// worn out.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "simulated/law.hpp"

namespace sparewell::simulated {

/// `unit` is a position in Clinic::units.
struct TrueEnd {
  std::size_t unit = 0;
  Date worn_on;  ///< if nothing else ends it before
};

struct SimulatedClinic {
  Clinic
      clinic;  ///< the records as of the end of today, changes of usage announced by then included
  Date today;
  std::optional<Date> records_begin;       ///< units that ended by then are not in the records
  std::vector<Usage> true_usage;           ///< what Clinic::usage would be without gaps and errors
  std::map<ItemCode, double> log_effects;  ///< of items on the scale of their material
  std::vector<TrueEnd> ends;               ///< of the units in use, in the order of Clinic::units
};

/// Wear age grows by share * exp(beta . z) a day; a life ends on the first day by whose end it has
/// reached X, which is days after its issue since a date is one moment. Other endings come at
/// constant rates a day, after wear when both come on one day. A part is replaced at once or, at
/// times, some days late. After today a unit goes on at today's share and under the usage announced
/// by today; the truth holds no other changes. The same arguments give the same clinic on every
/// machine whose exp, log and pow round alike.
[[nodiscard]] SimulatedClinic simulate(const ClinicLaw& law, int patients, Date today,
                                       std::uint64_t seed);

}  // namespace sparewell::simulated
