/// Everyone's parts beside what is recorded of their sensitivities, and who is newly affected.
#pragma once

#include <optional>
#include <vector>

#include "care/sensitivity.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::care {

/// How a part and a patient belong together.
enum class Holding {
  worn,     ///< a unit in use, one in the drawer included
  booked,   ///< a piece put away or booked for a visit
  on_order  ///< a piece of an order that is for the patient and has not come
};

/// One part of one patient beside one recorded sensitivity.
struct Examined {
  Holding holding = Holding::worn;
  PatientRef patient;
  std::optional<Side> side;  ///< of a unit
  ItemCode item;
  SensitivityVerdict verdict;
};

/// Every part of every patient of whom a sensitivity is recorded, on `day`: units in use, bookings,
/// and pieces of orders for a patient. Parts that the catalogue does not know are not_declared.
/// Alike pieces of one patient and side are one. In the order of the clinic's records. Each pair of
/// item and substance is compared once, however many patients have it.
[[nodiscard]] std::vector<Examined> examine(const Clinic& clinic, const SubstanceTable& table,
                                            Date day);

/// A part whose verdict is graver than it was, or the same and no longer answered by a decision.
struct Worsened {
  Examined now;
  std::optional<Verdict> before;  ///< empty when there was no such part or sensitivity
};

/// Those of `after` that are conflicts or possible conflicts and were not, or less, in `before`, and
/// that no decision answers; the gravest first. Both by examine().
[[nodiscard]] std::vector<Worsened> newly_against(const std::vector<Examined>& before,
                                                  const std::vector<Examined>& after);

}  // namespace sparewell::care
