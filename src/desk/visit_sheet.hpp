/// What is prepared for the visits of one day: for each patient what is near its end, what was
/// found, and what to have ready.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "desk/visit_bench.hpp"
#include "desk/visit_findings.hpp"

namespace sparewell::desk {

struct VisitSheet {
  PatientRef patient;
  std::string name;    ///< as recorded; whoever prints decides whether it is shown
  std::string reason;  ///< why the patient is expected on the day
  std::vector<std::string> prostheses;
  std::vector<std::string> sensitivities;
  bool sensitive = false;  ///< a sensitivity is recorded
  std::vector<NearEnd> near_end;
  std::vector<VisitFinding> findings;
  std::vector<BenchPieces> bench;

  /// Of the findings, those of this gravity.
  [[nodiscard]] int count(care::Gravity gravity) const;
  [[nodiscard]] int missing() const;  ///< pieces for the bench that the shelf does not have
};

struct VisitDay {
  Date on;
  std::vector<VisitSheet> sheets;  ///< by patient reference
};

/// Every patient whose next visit is on that day, or for whom pieces are booked for it, with which
/// of the two it is.
[[nodiscard]] std::map<PatientRef, std::string> patients_expected(const Day& day, Date on);

/// The first day after `after` on which somebody is expected; empty when none is known.
[[nodiscard]] std::optional<Date> next_visits(const Day& day, Date after);

/// A sheet for each of them.
[[nodiscard]] VisitDay visit_day(const Day& day, Date on);

}  // namespace sparewell::desk
