#include "desk/day.hpp"

#include "clinic/in_parallel.hpp"
#include "clinic/say.hpp"
#include "supply/lead_time.hpp"
#include "wear/competing_endings.hpp"

namespace sparewell::desk {
namespace {

constexpr double year_days = 365;

/// Days within which nine in ten orders of an item arrive, remembered because few items serve many
/// units.
class SafeLeadDays {
 public:
  explicit SafeLeadDays(const Clinic& clinic) : times_{clinic} {}

  [[nodiscard]] days of(const Item& item) {
    const auto [known, added] = known_.try_emplace(item.code);
    if (added) known->second = days{times_.of(item).quantile(0.9)};
    return known->second;
  }

 private:
  supply::LeadTimes times_;
  std::unordered_map<ItemCode, days> known_;
};

}  // namespace

Day::Day(Assessment assessment, wear::Surprises surprises, RestockPlan restock)
    : assessment_{std::move(assessment)},
      surprises_{std::move(surprises)},
      restock_{std::move(restock)},
      index_{assessment_.clinic},
      branches_{assessment_.clinic},
      alternation_{assessment_.clinic, index_, assessment_.today} {
  const auto& units = assessment_.clinic.units;
  for (std::size_t i = 0; i < units.size(); ++i) units_[units[i].patient].push_back(i);
  const auto& lives = assessment_.lives;
  const wear::UseBys use_bys{assessment_.clinic};
  std::vector<Forecast> forecasts(lives.size());
  in_parallel(lives.size(), [&](std::size_t i) {
    const auto& life = lives[i].life;
    const Unit& unit = units[lives[i].unit];
    const auto* item = index_.item(unit.item);
    forecasts[i] = {life.wear_age_days(),
                    life.worn_out_date(0.1),
                    life.worn_out_date(0.5),
                    life.worn_out_date(0.9),
                    std::nullopt,
                    wear::ending_chances(life, lives[i].others, year_days).ended_otherwise(),
                    item ? use_bys.of(unit, *item) : std::nullopt};
  });
  SafeLeadDays lead_days{assessment_.clinic};
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const auto* item = index_.item(units[lives[i].unit].item);
    if (item && forecasts[i].p10) forecasts[i].order_by = *forecasts[i].p10 - lead_days.of(*item);
    forecasts_.emplace(lives[i].unit, forecasts[i]);
  }
  const auto& proposal = assessment_.proposal;
  for (std::size_t i = 0; i < proposal.size(); ++i) proposed_.emplace(proposal[i].item, i);
}

const std::vector<std::size_t>& Day::units_of(const PatientRef& patient) const {
  static const std::vector<std::size_t> none;
  const auto found = units_.find(patient);
  return found == units_.end() ? none : found->second;
}

const Forecast* Day::forecast(std::size_t unit) const {
  const auto found = forecasts_.find(unit);
  return found == forecasts_.end() ? nullptr : &found->second;
}

const supply::ProposalLine* Day::proposed(const ItemCode& item) const {
  const auto found = proposed_.find(item);
  return found == proposed_.end() ? nullptr : &assessment_.proposal[found->second];
}

std::string no_forecast_words(const Day& day) {
  return day.worked_out() ? said("not foreseen") : said("being worked out");
}

std::string full_name(const Patient& patient) {
  if (patient.given_name.empty() || patient.family_name.empty()) {
    return patient.given_name + patient.family_name;
  }
  return patient.given_name + " " + patient.family_name;
}

std::string patient_words(const Day& day, const PatientRef& patient) {
  const auto* known = day.index().patient(patient);
  const auto name = known ? full_name(*known) : std::string{};
  return name.empty() ? patient.text : patient.text + "  " + name;
}

}  // namespace sparewell::desk
