/// Whether the piece itself, and the patient's records, allow that it is handed over.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "care/chain_rules.hpp"
#include "care/gravity.hpp"
#include "clinic/clinic.hpp"
#include "clinic/place.hpp"

namespace sparewell::care {

enum class PieceFault {
  expired,             ///< past its use-by date on the day
  quarantined,         ///< lies in quarantine
  recalled,            ///< parts of its lot were taken from patients for a recall
  others_quarantined,  ///< other pieces of its lot lie in quarantine
  short_dated,         ///< its use-by date comes before it is expected to be worn out
  no_use_by            ///< the item has a shelf life, but no use-by date is recorded
};

struct PieceFinding {
  PieceFault fault = PieceFault::expired;
  StockLevel piece;

  [[nodiscard]] Gravity gravity() const;
};

/// What stands against the pieces that are to be taken. `expected_days` is how long such a part is
/// expected to last in days of use; empty when not known, and then short_dated is not found.
[[nodiscard]] std::vector<PieceFinding> check_pieces(const Clinic& clinic, const Item& item,
                                                     std::span<const StockLevel> taken, Date day,
                                                     std::optional<int> expected_days,
                                                     std::span<const Place> places = {});

enum class PatientFault {
  deceased,       ///< a part of the patient ended for that reason
  no_prosthesis,  ///< none is recorded on that side on the day
  two_in_use      ///< two or more parts that do the same are in use there already; not for socks
};

[[nodiscard]] Gravity gravity(PatientFault fault);

[[nodiscard]] std::vector<PatientFault> check_patient(const ChainRules& rules,
                                                      const Clinic& clinic,
                                                      const ClinicIndex& index,
                                                      const PatientRef& patient, Side side,
                                                      const Item& item, Date day);

}  // namespace sparewell::care
