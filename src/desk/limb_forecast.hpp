/// How the limbs of a clinic's patients change, and until when they fit what they wear.
#pragma once

#include <optional>
#include <unordered_map>
#include <vector>

#include "care/limb_trend.hpp"
#include "clinic/clinic.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::desk {

/// Measurements and prostheses found by patient. Copies what it needs of the clinic.
class LimbRecords {
 public:
  explicit LimbRecords(const Clinic& clinic);
  /// Of one patient alone.
  LimbRecords(const Clinic& clinic, const PatientRef& only);

  /// Of the unit's side at the height of the item's size, until `day`; none for an item without a
  /// stated height.
  [[nodiscard]] std::vector<care::LimbReading> readings(const Unit& unit, const Item& item,
                                                        Date day) const;
  [[nodiscard]] std::vector<care::LimbReading> readings(const PatientRef& patient, Side side,
                                                        double at_cm, Date day) const;
  /// By these readings; empty without one.
  [[nodiscard]] std::optional<care::LimbTrend> trend(const PatientRef& patient, Side side,
                                                     const std::vector<care::LimbReading>& readings,
                                                     Date day) const;
  /// Heights at which the side was measured until `day`, ascending.
  [[nodiscard]] std::vector<double> heights(const PatientRef& patient, Side side, Date day) const;

 private:
  struct OfPatient {
    std::vector<Measurement> measurements;
    std::vector<Prosthesis> prostheses;
  };
  [[nodiscard]] const OfPatient& of(const PatientRef& patient) const;

  std::unordered_map<PatientRef, OfPatient> patients_;
};

/// Sets LifeOfUnit::needed_until of every unit whose limb is foreseen to leave the size of its item
/// (LimbTrend::leaves), to the day before; `today` where it is outside already.
void foresee_limbs(const Clinic& clinic, const LimbRecords& limbs,
                   std::vector<wear::LifeOfUnit>& lives, Date today);

}  // namespace sparewell::desk
