#include "care/examination.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

namespace sparewell::care {
namespace {

/// What is recorded of each patient.
template <class Record>
std::unordered_map<PatientRef, std::vector<const Record*>> by_patient(
    const std::vector<Record>& records) {
  std::unordered_map<PatientRef, std::vector<const Record*>> made;
  for (const Record& record : records) made[record.patient].push_back(&record);
  return made;
}

class Examiner {
 public:
  Examiner(const Clinic& clinic, const SubstanceTable& table, Date day)
      : clinic_{clinic},
        table_{table},
        day_{day},
        index_{clinic},
        recorded_{by_patient(clinic.sensitivities)} {}

  std::vector<Examined> found() {
    for (const Unit& unit : clinic_.units) {
      if (unit.in_use_on(day_)) add(Holding::worn, unit.patient, unit.side, unit.item);
    }
    for (const Reservation& booked : clinic_.reservations) {
      if (booked.quantity > 0) add(Holding::booked, booked.patient, std::nullopt, booked.item);
    }
    for (const OrderPiece& piece : clinic_.order_pieces) {
      if (recorded_.contains(piece.patient) && is_to_come(piece)) add(Holding::on_order, piece.patient, std::nullopt, piece.item);
    }
    return std::move(made_);
  }

 private:
  void add(Holding holding, const PatientRef& patient, std::optional<Side> side,
           const ItemCode& code) {
    const auto recorded = recorded_.find(patient);
    if (recorded == recorded_.end()) return;
    if (!seen_.emplace(holding, patient, side, code).second) return;
    for (const Sensitivity* each : recorded->second) {
      Examined made{holding, patient, side, code, verdict(code, *each)};
      made.verdict.decided = decision_on(made.verdict, code, clinic_.decisions, day_);
      made_.push_back(std::move(made));
    }
  }

  [[nodiscard]] bool is_to_come(const OrderPiece& piece) const {
    if (piece.put_away_on) return false;
    return std::ranges::any_of(clinic_.order_lines, [&](const OrderLine& line) {
      return line.item == piece.item && line.order_ref == piece.order_ref &&
             line.supplier == piece.supplier && line.state != OrderState::cancelled &&
             line.received_quantity < line.quantity;
    });
  }

  SensitivityVerdict verdict(const ItemCode& code, const Sensitivity& recorded) {
    const auto [known, is_new] = known_.try_emplace({code, recorded.substance});
    if (is_new) {
      const Item* item = index_.item(code);
      known->second.verdict = Verdict::not_declared;
      if (item != nullptr) known->second = verdict_of(*item, recorded, table_);
    }
    SensitivityVerdict made = known->second;
    made.recorded = recorded;
    return made;
  }

  const Clinic& clinic_;
  const SubstanceTable& table_;
  Date day_;
  ClinicIndex index_;
  std::unordered_map<PatientRef, std::vector<const Sensitivity*>> recorded_;
  std::map<std::pair<ItemCode, std::string>, SensitivityVerdict> known_;
  std::set<std::tuple<Holding, PatientRef, std::optional<Side>, ItemCode>> seen_;
  std::vector<Examined> made_;
};

auto key_of(const Examined& each) {
  return std::tie(each.holding, each.patient, each.side, each.item,
                  each.verdict.recorded.substance);
}

}  // namespace

std::vector<Examined> examine(const Clinic& clinic, const SubstanceTable& table, Date day) {
  return Examiner{clinic, table, day}.found();
}

std::vector<Worsened> newly_against(const std::vector<Examined>& before,
                                    const std::vector<Examined>& after) {
  std::map<decltype(key_of(before.front())), const SensitivityVerdict*> earlier;
  for (const Examined& each : before) {
    // One substance may be recorded on several days; the gravest answer counts.
    const auto [at, is_new] = earlier.emplace(key_of(each), &each.verdict);
    if (!is_new && each.verdict.verdict < at->second->verdict) at->second = &each.verdict;
  }
  std::vector<Worsened> made;
  for (const Examined& each : after) {
    const bool grave = each.verdict.verdict <= Verdict::possible_conflict;
    if (!grave || each.verdict.decided) continue;
    const auto known = earlier.find(key_of(each));
    if (known == earlier.end()) {
      made.push_back({each, std::nullopt});
      continue;
    }
    const auto& was = *known->second;
    if (each.verdict.verdict < was.verdict || was.decided) made.push_back({each, was.verdict});
  }
  std::ranges::stable_sort(made, {}, [](const Worsened& each) { return each.now.verdict.verdict; });
  return made;
}

}  // namespace sparewell::care
