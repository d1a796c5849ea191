/// What is prepared for the visits of one day: for each patient what is near its end, what was
/// found, and what to have ready.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "desk/visit_findings.hpp"

namespace sparewell::desk {

/// A part is near its end when one in ten like it is worn out within so many days of the visit, or
/// its use-by date lies there (our choice: a visit and a lead time).
inline constexpr days near_end_days{60};

struct NearEnd {
  std::vector<std::size_t> units;  ///< alike: positions in Clinic::units, the first to end first
  std::string words;
};

/// Pieces to have ready on the bench.
struct BenchPieces {
  ItemCode item;
  int quantity = 0;
  bool booked = false;           ///< otherwise to replace what is near its end
  std::vector<StockLevel> take;  ///< from the shelf; fewer than `quantity` where it has no more
  std::string stopped;           ///< why a check speaks against it; then nothing is taken
  std::string words;

  [[nodiscard]] int missing() const;
};

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

/// A sheet for each of them. Pieces on the shelf are taken once: what one patient's bench gets, the
/// next one's does not.
[[nodiscard]] VisitDay visit_day(const Day& day, Date on);

}  // namespace sparewell::desk
