/// Which parts are to be billed, and the records of each patient that billing compares.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// Service dates up to so many days off are ordinary: common practice, no source.
inline constexpr int ordinary_days = 14;

enum class Standing {
  expected,      ///< to be billed
  before_books,  ///< its claim may lie before the books, or it was likely brought along: none is missed
  came_back      ///< returned within `ordinary_days`: to be unbilled, or taken back
};

/// Positions in the vectors of a Clinic, in an order that depends on what the records say alone.
struct PatientRecords {
  PatientRef patient;
  std::vector<std::size_t> units;        ///< by day of issue
  std::vector<std::size_t> claim_lines;  ///< by day of service
  std::vector<std::size_t> prostheses;   ///< by day of delivery
};

/// Of every patient who has a part or a claim line, by reference.
[[nodiscard]] std::vector<PatientRecords> records_of_patients(const Clinic& clinic);
/// Of one patient.
[[nodiscard]] PatientRecords records_of_patient(const Clinic& clinic, const PatientRef& patient);

/// The first day whose parts are compared with claims: as the clinic says, else that of the first
/// service that was billed. Empty: nothing is compared.
[[nodiscard]] std::optional<Date> books_begin(const Clinic& clinic);

/// The parts of one patient.
class Scope {
 public:
  Scope(const Clinic& clinic, const PatientRecords& records, std::optional<Date> begin);

  /// Empty for what is not to be billed: issued before the books begin, or brought along by the
  /// patient. Parts brought along bear neither lot nor serial number and were issued before the
  /// first part of the patient that does, while no part of theirs had ended.
  [[nodiscard]] std::optional<Standing> of(const Unit& unit) const;

 private:
  [[nodiscard]] bool brought_along(const Unit& unit) const;

  std::optional<Date> begin_;
  std::optional<Date> first_numbered_;
  std::optional<Date> first_ending_;
};

/// LT or RT among the modifiers, else the recorded side; empty where both stand there, or nothing.
[[nodiscard]] std::optional<Side> billed_side(const ClaimLine& line);

}  // namespace sparewell::billing
