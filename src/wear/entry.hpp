/// From when on each unit was under observation.
#pragma once

#include <optional>
#include <unordered_map>

#include "clinic/clinic.hpp"

namespace sparewell::wear {

/// A unit is usually seen from its issue on. It enters later, at an age to which it is known to
/// have lasted, when it was in use before the clinic's records begin, or when the patient brought
/// it along: it bears neither lot nor serial number, was issued before the first part of the
/// patient that does, and no part of the patient had ended by then. Parts that had worn out
/// elsewhere before are not in the records, so those brought along are the ones that lasted.
class Entries {
 public:
  /// As known at the end of `today`. `records_begin`: the end of the day from which the endings of
  /// the whole clinic are recorded; empty when all are.
  Entries(const Clinic& clinic, Date today, std::optional<Date> records_begin);

  /// The day at whose end the unit entered; empty when it was seen from its issue on.
  [[nodiscard]] std::optional<Date> of(const Unit& unit) const;

 private:
  struct Patient {
    std::optional<Date> first_numbered;  ///< issue of a part with lot or serial number
    std::optional<Date> first_ending;
  };

  std::optional<Date> records_begin_;
  std::unordered_map<PatientRef, Patient> patients_;
};

}  // namespace sparewell::wear
