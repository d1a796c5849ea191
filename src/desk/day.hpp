/// One assessed day, prepared for the screens: what they all look up.
#pragma once

#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

#include "clinic/branches.hpp"
#include "desk/assessment.hpp"
#include "desk/restock.hpp"
#include "wear/alternation.hpp"
#include "wear/shelf_life.hpp"
#include "wear/surprises.hpp"

namespace sparewell::desk {

/// Dates by which a unit in use will have worn out, with the chance in percent in the name. Empty
/// where the date lies more than a hundred years ahead.
struct Forecast {
  double wear_age_days = 0;
  std::optional<Date> p10;
  std::optional<Date> p50;
  std::optional<Date> p90;
  /// The day by which a replacement has to be ordered to be there by p10: p10 less the 0.9 quantile
  /// of the lead time.
  std::optional<Date> order_by;
  double otherwise_in_a_year = 0;     ///< chance to be lost, outgrown, exchanged ... by then
  std::optional<wear::UseBy> use_by;  ///< see wear/shelf_life.hpp
};

/// Immutable, so that the window and a background job may read it at the same time.
class Day {
 public:
  explicit Day(Assessment assessment, wear::Surprises surprises = {}, RestockPlan restock = {});
  Day(const Day&) = delete;
  Day& operator=(const Day&) = delete;

  [[nodiscard]] Date today() const { return assessment_.today; }
  [[nodiscard]] const Clinic& clinic() const { return assessment_.clinic; }
  [[nodiscard]] const Assessment& assessment() const { return assessment_; }
  /// False while there are the records alone: nothing is said then of what is not known yet.
  [[nodiscard]] bool worked_out() const { return assessment_.worked_out; }
  /// Early endings, with positions in Clinic::units.
  [[nodiscard]] const wear::Surprises& surprises() const { return surprises_; }
  [[nodiscard]] const ClinicIndex& index() const { return index_; }
  [[nodiscard]] const Branches& branches() const { return branches_; }
  /// What should go from one branch to another; without a plan it is not known.
  [[nodiscard]] const RestockPlan& restock() const { return restock_; }
  /// How units that are in use together divide the time.
  [[nodiscard]] const wear::Alternation& alternation() const { return alternation_; }

  /// Positions in Clinic::units, in the order of that vector.
  [[nodiscard]] const std::vector<std::size_t>& units_of(const PatientRef& patient) const;
  /// nullptr for a unit that is not in use, or whose item the catalogue does not know.
  [[nodiscard]] const Forecast* forecast(std::size_t unit) const;
  /// The item's proposed order line; nullptr when nothing is proposed.
  [[nodiscard]] const supply::ProposalLine* proposed(const ItemCode& item) const;

 private:
  Assessment assessment_;
  wear::Surprises surprises_;
  RestockPlan restock_;
  ClinicIndex index_;
  Branches branches_;
  wear::Alternation alternation_;
  std::unordered_map<PatientRef, std::vector<std::size_t>> units_;
  std::unordered_map<std::size_t, Forecast> forecasts_;
  std::unordered_map<ItemCode, std::size_t> proposed_;
};

using DayPtr = std::shared_ptr<const Day>;

/// What stands in place of a date without a forecast: "not foreseen", "being worked out".
[[nodiscard]] std::string no_forecast_words(const Day& day);
/// "P-0012  Ana Field": a patient on the screens of the clinic.
[[nodiscard]] std::string patient_words(const Day& day, const PatientRef& patient);
/// "Ana Field"; "" when the clinic keeps no name.
[[nodiscard]] std::string full_name(const Patient& patient);

}  // namespace sparewell::desk
