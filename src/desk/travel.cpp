#include "desk/travel.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "care/trip.hpp"
#include "care/worn.hpp"
#include "desk/expected_wear.hpp"
#include "desk/suspension_table.hpp"
#include "desk/taken_spares.hpp"
#include "supply/lead_time.hpp"
#include "supply/patient_order.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array sides{Side::left, Side::right};

std::string refusal_of(const Clinic& clinic, const TravelRequest& request, Date today) {
  if (ClinicIndex{clinic}.patient({request.patient}) == nullptr) {
    return fmt::format("There is no patient '{}'; check the reference.", request.patient);
  }
  if (request.departure < today) {
    return fmt::format("The departure, {}, has passed; name today or a later day.",
                       iso_text(request.departure));
  }
  if (request.back < request.departure) {
    return fmt::format("The return, {}, is before the departure, {}; correct one of them.",
                       iso_text(request.back), iso_text(request.departure));
  }
  return {};
}

/// The usage recorded last by that day.
Usage usage_on(const Clinic& clinic, Date day) {
  Usage latest;
  for (const Usage& usage : clinic.usage) {
    if (usage.from_date <= day && usage.from_date >= latest.from_date) latest = usage;
  }
  return latest;
}

bool changes(const TripUse& use) {
  return use.activity || use.kneeling_hours || use.wear_hours || use.sweating || use.impact_sport;
}

/// From the departure on, the use of the trip; recorded changes meanwhile do not happen.
void use_on_trip(Clinic& clinic, const TripUse& use, const PatientRef& patient, Date departure) {
  if (!changes(use)) return;
  Usage trip = usage_on(clinic, departure);
  trip.patient = patient;
  trip.from_date = departure + days{1};
  if (use.activity) trip.activity = use.activity;
  if (use.kneeling_hours) trip.kneeling_hours = use.kneeling_hours;
  if (use.wear_hours) trip.wear_hours = use.wear_hours;
  if (use.sweating) trip.sweating = use.sweating;
  if (use.impact_sport) trip.impact_sport = use.impact_sport;
  std::erase_if(clinic.usage, [&](const Usage& usage) { return usage.from_date > departure; });
  clinic.usage.push_back(trip);
}

bool has(const Item& item, care::Function function) {
  const auto functions = built_in_chain_rules().functions_of(item);
  return std::ranges::find(functions, function) != functions.end();
}

class Traveller {
 public:
  Traveller(const Assessment& assessment, const TravelRequest& request)
      : known_{assessment.clinic},
        clinic_{of_patient(assessment.clinic, {request.patient})},
        trip_{request.departure, request.back + days{request.delay_days}},
        index_{known_} {
    use_on_trip(clinic_, request.use, {request.patient}, request.departure);
    lives_ = wear::lives_of_units_in_use(clinic_, assessment.fitted, assessment.today);
  }

  void add_side(Side side, const PatientRef& patient, TravelCheck& check) {
    const auto worn = care::worn_on(clinic_, index_, patient, side, trip_.departure);
    if (worn.prosthesis == nullptr) return;
    for (const auto function : care::needed_by(built_in_chain_rules(), worn)) {
      add_function(side, function, check);
    }
  }

 private:
  void add_function(Side side, care::Function function, TravelCheck& check) {
    TravelPart part;
    part.side = side;
    part.function = function;
    std::vector<supply::Pmf> failures;
    Date newest{};
    for (const auto& of : lives_) {
      const Unit& unit = clinic_.units[of.unit];
      const Item* item = index_.item(unit.item);
      if (unit.side != side || item == nullptr || !has(*item, function)) continue;
      failures.push_back(care::failures_on(trip_, of, fresh_));
      if (failures.size() > 1 && unit.issued_on < newest) continue;
      newest = unit.issued_on;
      part.item = of.next_item.value_or(unit.item);
    }
    if (failures.empty()) {
      check.unknown.emplace_back(side, function);
      return;
    }
    part.need.carried = static_cast<int>(failures.size()) - 1;
    part.need.failures = supply::convolve_all(std::move(failures));
    check.parts.push_back(std::move(part));
  }

  const Clinic& known_;
  Clinic clinic_;  ///< what the forecast reads of the patient
  care::Trip trip_;
  ClinicIndex index_;
  std::vector<wear::LifeOfUnit> lives_;
  supply::FreshCountsCache fresh_;
};

/// Prices of one currency; otherwise every piece counts alike.
void set_costs(TravelCheck& check, const ClinicIndex& index) {
  std::optional<Currency> currency;
  for (const TravelPart& part : check.parts) {
    const Item* item = index.item(part.item);
    const auto& cost = item == nullptr ? std::optional<Money>{} : item->unit_cost;
    if (!cost || cost->minor <= 0 || (currency && *currency != cost->currency)) {
      check.by_pieces = true;
    } else {
      currency = cost->currency;
    }
  }
  for (TravelPart& part : check.parts) {
    part.need.cost = check.by_pieces ? 1 : index.item(part.item)->unit_cost->major();
  }
}

std::vector<care::SpareNeed> needs_of(const TravelCheck& check) {
  std::vector<care::SpareNeed> made;
  for (const TravelPart& part : check.parts) made.push_back(part.need);
  return made;
}

/// Takes the spares from what is left on the shelf: both sides may need the same item.
void find_spares(TravelPart& part, const TravelCheck& check, const Clinic& clinic,
                 std::vector<StockLevel>& shelf, const supply::LeadTimes& leads) {
  part.take =
      take_spares(shelf, clinic, part.item, {check.request.patient}, part.spares, check.last_day);
  int found = 0;
  for (const StockLevel& level : part.take) found += level.quantity;
  part.to_order = part.spares - found;
  if (part.to_order == 0) return;
  if (const Item* item = ClinicIndex{clinic}.item(part.item)) {
    part.order_by =
        check.request.departure - days{leads.of(*item).quantile(supply::late_arrival_quantile)};
  }
}

/// The checks before an issue, of the spares of one part.
void check_spares(TravelPart& part, const TravelCheck& check, const Clinic& clinic) {
  IssueQuestion question;
  question.patient = {check.request.patient};
  question.side = part.side;
  question.item = part.item;
  question.quantity = part.spares;
  question.day = check.request.departure;
  const auto checked = check_without_piece(clinic, question);
  if (!checked) return;
  std::ranges::copy_if(checked->findings, std::back_inserter(part.stops),
                       [](const auto& each) { return each.gravity == care::Gravity::stops; });
}

}  // namespace

Expected<TravelCheck> check_travel(const Assessment& assessment, const TravelRequest& request) {
  const Clinic& clinic = assessment.clinic;
  if (auto words = refusal_of(clinic, request, assessment.today); !words.empty()) {
    return refuse(std::move(words));
  }
  TravelCheck check;
  check.request = request;
  check.last_day = request.back + days{request.delay_days};
  check.by_pieces = request.by_pieces;
  Traveller traveller{assessment, request};
  for (const Side side : sides) traveller.add_side(side, {request.patient}, check);
  if (check.parts.empty() && check.unknown.empty()) {
    return refuse(
        fmt::format("No prosthesis of {} whose suspension wears parts is recorded for "
                    "{}; there is nothing to check.",
                    request.patient, iso_text(request.departure)));
  }
  set_costs(check, ClinicIndex{clinic});
  const auto needs = needs_of(check);
  const auto kit = care::cheapest_kit(needs, request.wanted);
  check.without_spares = care::assurance(needs, std::vector<int>(needs.size(), 0));
  check.with_spares = kit.assurance;
  check.reached = kit.reached && check.unknown.empty();
  std::vector<StockLevel> shelf = clinic.shelf;
  const supply::LeadTimes leads{clinic};
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    check.parts[i].spares = kit.spares[i];
    if (kit.spares[i] == 0) continue;
    find_spares(check.parts[i], check, clinic, shelf, leads);
    check_spares(check.parts[i], check, clinic);
    if (!check.parts[i].stops.empty()) check.reached = false;
  }
  return check;
}

double without_one(const TravelCheck& check, std::size_t part) {
  std::vector<int> spares;
  for (const TravelPart& each : check.parts) spares.push_back(each.spares);
  spares.at(part) = std::max(0, spares.at(part) - 1);
  return care::assurance(needs_of(check), spares);
}

}  // namespace sparewell::desk
