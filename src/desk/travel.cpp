#include "desk/travel.hpp"

#include <algorithm>
#include <array>

#include "care/resupply.hpp"
#include "care/trip.hpp"
#include "care/worn.hpp"
#include "clinic/say.hpp"
#include "desk/expected_wear.hpp"
#include "desk/suspension_table.hpp"
#include "desk/taken_spares.hpp"
#include "desk/travel_parts.hpp"
#include "supply/lead_time.hpp"
#include "supply/patient_order.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array sides{Side::left, Side::right};

std::string refusal_of(const Clinic& clinic, const TravelRequest& request, Date today) {
  if (ClinicIndex{clinic}.patient({request.patient}) == nullptr) {
    return say("There is no patient '{}'; check the reference.", request.patient);
  }
  if (request.departure < today) {
    return say("The departure, {}, has passed; name today or a later day.",
               iso_text(request.departure));
  }
  if (request.back < request.departure) {
    return say("The return, {}, is before the departure, {}; correct one of them.",
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
  return use.activity || use.kneeling_hours || use.wear_hours || use.sweating || use.impact_sport ||
         use.water;
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
  if (use.water) trip.sweating = Sweating::high;
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
        index_{known_},
        resupply_{request.resupply_days} {
    use_on_trip(clinic_, request.use, {request.patient}, request.departure);
    lives_ = wear::lives_of_units_in_use(clinic_, assessment.fitted, assessment.today);
  }

  void add_side(Side side, const PatientRef& patient, TravelCheck& check) {
    const auto worn = care::worn_on(clinic_, index_, patient, side, trip_.departure);
    if (worn.prosthesis == nullptr) return;
    for (const Item* item : worn.items) {
      const std::pair what{item->kind, item->material};
      if (std::ranges::find(check.along, what) == check.along.end()) check.along.push_back(what);
    }
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
    std::vector<wear::LifeOfUnit> of_function;
    Date newest{};
    for (const auto& of : lives_) {
      const Unit& unit = clinic_.units[of.unit];
      const Item* item = index_.item(unit.item);
      if (unit.side != side || item == nullptr || !has(*item, function)) continue;
      failures.push_back(care::failures_on(trip_, of, fresh_));
      of_function.push_back(of);
      if (failures.size() > 1 && unit.issued_on < newest) continue;
      newest = unit.issued_on;
      part.item = of.next_item.value_or(unit.item);
    }
    if (failures.empty()) {
      check.unknown.emplace_back(side, function);
      return;
    }
    part.lent = lent_of(side, part.item, {check.request.patient});
    part.need.carried = static_cast<int>(failures.size()) - 1 + part.lent_pieces();
    part.need.failures = supply::convolve_all(std::move(failures));
    if (resupply_) {
      part.need.resupplied = care::lasting_with_resupply(trip_, of_function, *resupply_,
                                                         part.need.carried + care::most_spares);
    }
    check.parts.push_back(std::move(part));
  }

  /// Spares that the patient has on loan for the whole trip.
  [[nodiscard]] std::vector<StockLevel> lent_of(Side side, const ItemCode& item,
                                                const PatientRef& patient) const {
    std::vector<StockLevel> made;
    for (const Loan& loan : known_.loans) {
      const bool along = loan.patient == patient && loan.side == side && loan.lot.item == item &&
                         loan.due_on >= trip_.last_day && loan.outstanding() > 0;
      if (along) made.push_back({loan.lot, loan_place().name, loan.outstanding()});
    }
    return made;
  }

  const Clinic& known_;
  Clinic clinic_;  ///< what the forecast reads of the patient
  care::Trip trip_;
  ClinicIndex index_;
  std::optional<int> resupply_;
  std::vector<wear::LifeOfUnit> lives_;
  supply::FreshCountsCache fresh_;
};

std::vector<care::SpareNeed> needs_of(const TravelCheck& check) {
  std::vector<care::SpareNeed> made;
  for (const TravelPart& part : check.parts) made.push_back(part.need);
  return made;
}

}  // namespace

int TravelPart::lent_pieces() const {
  int pieces = 0;
  for (const StockLevel& level : lent) pieces += level.quantity;
  return pieces;
}

bool set_travel_costs(std::span<TravelPart* const> parts, const ClinicIndex& index,
                      bool by_pieces) {
  std::optional<Currency> currency;
  for (const TravelPart* part : parts) {
    const Item* item = index.item(part->item);
    const auto& cost = item == nullptr ? std::optional<Money>{} : item->unit_cost;
    if (!cost || cost->minor <= 0 || (currency && *currency != cost->currency)) {
      by_pieces = true;
    } else {
      currency = cost->currency;
    }
  }
  for (TravelPart* part : parts) {
    part->need.cost = by_pieces ? 1 : index.item(part->item)->unit_cost->major();
  }
  return by_pieces;
}

/// Both sides may need the same item.
void find_travel_spares(TravelPart& part, const TravelCheck& check, const Clinic& clinic,
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

std::vector<IssueFinding> what_stops_spares(const TravelPart& part, int quantity,
                                            const TravelRequest& request, const Clinic& clinic) {
  IssueQuestion question;
  question.patient = {request.patient};
  question.side = part.side;
  question.item = part.item;
  question.quantity = quantity;
  question.day = request.departure;
  std::vector<IssueFinding> made;
  const auto checked = check_without_piece(clinic, question);
  if (!checked) return made;
  std::ranges::copy_if(checked->findings, std::back_inserter(made),
                       [](const auto& each) { return each.gravity == care::Gravity::stops; });
  return made;
}

Expected<TravelCheck> gather_travel(const Assessment& assessment, const TravelRequest& request) {
  if (auto words = refusal_of(assessment.clinic, request, assessment.today); !words.empty()) {
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
        say("No prosthesis of {} whose suspension wears parts is recorded for "
            "{}; there is nothing to check.",
            request.patient, iso_text(request.departure)));
  }
  return check;
}

Expected<TravelCheck> check_travel(const Assessment& assessment, const TravelRequest& request) {
  const Clinic& clinic = assessment.clinic;
  auto gathered = gather_travel(assessment, request);
  if (!gathered) return gathered;
  TravelCheck& check = *gathered;
  std::vector<TravelPart*> parts;
  for (TravelPart& part : check.parts) parts.push_back(&part);
  check.by_pieces = set_travel_costs(parts, ClinicIndex{clinic}, request.by_pieces);
  const auto needs = needs_of(check);
  const auto kit = care::cheapest_kit(needs, request.wanted);
  check.without_spares = care::assurance(needs, std::vector<int>(needs.size(), 0));
  check.with_spares = kit.assurance;
  check.reached = kit.reached && check.unknown.empty();
  std::vector<StockLevel> shelf = clinic.shelf;
  const supply::LeadTimes leads{clinic};
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    TravelPart& part = check.parts[i];
    part.spares = kit.spares[i];
    if (part.spares == 0) continue;
    find_travel_spares(part, check, clinic, shelf, leads);
    part.stops = what_stops_spares(part, part.spares, request, clinic);
    if (!part.stops.empty()) check.reached = false;
  }
  return gathered;
}

double without_one(const TravelCheck& check, std::size_t part) {
  std::vector<int> spares;
  for (const TravelPart& each : check.parts) spares.push_back(each.spares);
  spares.at(part) = std::max(0, spares.at(part) - 1);
  return care::assurance(needs_of(check), spares);
}

}  // namespace sparewell::desk
