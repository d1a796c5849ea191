/// The whole computation of one day: what is known, how parts wear, what to order.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "desk/held_needs.hpp"
#include "supply/proposal.hpp"
#include "wear/clinic_fit.hpp"
#include "wear/priors.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::desk {

struct Assessment {
  Date today;
  Clinic clinic;  ///< as known at the end of today
  wear::ClinicLife fitted;
  std::vector<wear::LifeOfUnit> lives;  ///< units in use
  std::optional<Money> budget;          ///< that the proposal keeps to
  std::vector<supply::ProposalLine> proposal;
  std::vector<supply::HeldLine> held;  ///< needed, and not on today's orders
  std::vector<HeldNeed> held_needs;    ///< units in use for which nothing is ordered
  bool worked_out = true;  ///< false while today and the clinic alone are filled in
};

/// The records alone, to be looked at while the rest is worked out.
[[nodiscard]] Assessment records_only(Clinic clinic, Date today);

/// The fit and the forecast alone: the proposal, and the lines held back, are left empty.
[[nodiscard]] Assessment forecast(Clinic clinic, const wear::PriorTable& priors, Date today);

/// Runs the fit, the forecast and the proposal. Pure, and slow enough for a background job when the
/// clinic is large.
[[nodiscard]] Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today);

/// The same by another policy than that of the clinic's settings.
[[nodiscard]] Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today,
                                const supply::OrderPolicy& policy);

/// The table in resources/ that the program was built with.
[[nodiscard]] const wear::PriorTable& built_in_priors();

}  // namespace sparewell::desk
