#include "desk/patient_findings.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "care/attachment.hpp"
#include "care/chain.hpp"
#include "care/fit.hpp"
#include "care/part_state.hpp"
#include "clinic/say.hpp"
#include "desk/by_patient.hpp"
#include "desk/fit_view.hpp"
#include "desk/issue_words.hpp"
#include "desk/substance_table.hpp"
#include "desk/suspension_table.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

/// What the checks read of one patient.
struct OfPatient {
  PatientRef patient;
  Clinic worn;  ///< prostheses and units of this patient alone
  std::span<const Sensitivity> sensitivities;
  std::span<const SensitivityDecision> decisions;
  std::span<const Measurement> measurements;
};

class Finder {
 public:
  Finder(const Clinic& clinic, Date day)
      : clinic_{clinic}, day_{day}, index_{clinic}, substances_{substances_of(clinic, day)} {
    for (const Unit& unit : clinic.units) {
      if (unit.end_reason == EndReason::recall) in_doubt_.emplace(unit.item, unit.lot);
    }
    for (const StockLevel& level : clinic.shelf) {
      const bool held_back = sort_of_place(clinic.places, level.place) == PlaceSort::quarantine;
      if (held_back) in_doubt_.emplace(level.lot.item, level.lot.lot);
    }
  }

  std::vector<PatientFinding> found(const OfPatient& of) {
    made_.clear();
    for (const Side side : {Side::left, Side::right}) check_side(of, side);
    if (of.sensitivities.empty()) {
      static const Item any;
      PatientFinding none;
      none.patient = of.patient;
      none.finding = sensitivity_finding({}, any);
      made_.push_back(std::move(none));
    }
    return gravest_first();
  }

  /// With what is foreseen of the limb, which takes a fit of its trend.
  std::vector<PatientFinding> with_outlook(const OfPatient& of) {
    made_ = found(of);
    for (auto& each : limb_findings(clinic_, of.patient, day_)) {
      add(FindingTopic::size, of, each.side, each.item, std::move(each.finding));
    }
    return gravest_first();
  }

 private:
  std::vector<PatientFinding> gravest_first() {
    std::ranges::stable_sort(made_, {}, [](const auto& each) { return each.finding.gravity; });
    return std::move(made_);
  }

  void check_side(const OfPatient& of, Side side) {
    const auto worn = care::worn_on(of.worn, index_, of.patient, side, day_);
    std::vector<const Item*> seen;
    for (const Item* item : worn.items) {
      if (std::ranges::find(seen, item) != seen.end()) continue;
      seen.push_back(item);
      check_sensitivity(of, side, *item);
      check_size(of, side, *item);
      check_attachment(of, side, *item, worn);
    }
    check_chain(of, side, worn);
    check_lots(of, side);
  }

  PatientFinding& add(FindingTopic topic, const OfPatient& of, Side side, const ItemCode& item,
                      IssueFinding finding) {
    PatientFinding made;
    made.topic = topic;
    made.patient = of.patient;
    made.side = side;
    made.item = item;
    made.finding = std::move(finding);
    made_.push_back(std::move(made));
    return made_.back();
  }

  void check_sensitivity(const OfPatient& of, Side side, const Item& item) {
    if (of.sensitivities.empty()) return;
    for (const auto& verdict : care::check_sensitivities(item, of.patient, of.sensitivities,
                                                         *substances_, of.decisions, day_)) {
      auto& made =
          add(FindingTopic::sensitivity, of, side, item.code, sensitivity_finding(verdict, item));
      made.substance = verdict.recorded.substance;
      made.decided = verdict.decided.has_value();
    }
  }

  void check_size(const OfPatient& of, Side side, const Item& item) {
    const auto check = care::check_fit(item, of.patient, side, of.measurements, day_);
    if (check.fit == care::Fit::no_size) return;
    add(FindingTopic::size, of, side, item.code, fit_finding(check, item, side));
  }

  /// Two parts that do not go together are told of the one that is worn first in the chain.
  void check_attachment(const OfPatient& of, Side side, const Item& item, const care::Worn& worn) {
    const auto suspension = worn.prosthesis ? worn.prosthesis->suspension : Suspension::pin;
    for (const auto& found : care::check_attachment(built_in_chain_rules(), item, worn)) {
      if (found.other != nullptr && found.other->kind < item.kind) continue;
      add(FindingTopic::suspension, of, side, item.code,
          attachment_finding(found, item, suspension));
    }
  }

  void check_chain(const OfPatient& of, Side side, const care::Worn& worn) {
    for (const auto function : care::missing_from(built_in_chain_rules(), worn)) {
      auto& made = add(FindingTopic::suspension, of, side, {},
                       missing_finding(function, worn.prosthesis->suspension, side));
      made.missing = function;
    }
  }

  void check_lots(const OfPatient& of, Side side) {
    std::vector<StockLevel> seen;
    for (const Unit& unit : of.worn.units) {
      const Item* item = index_.item(unit.item);
      if (unit.side != side || item == nullptr || !unit.in_use_on(day_)) continue;
      if (unit.lot.empty() || !in_doubt_.contains({unit.item, unit.lot})) continue;
      const StockLevel piece{{unit.item, unit.lot, std::nullopt}, "", 1};
      if (std::ranges::find(seen, piece) != seen.end()) continue;
      seen.push_back(piece);
      for (const auto& found :
           care::check_pieces(clinic_, *item, {&piece, 1}, day_, std::nullopt, clinic_.places)) {
        const bool of_lot = found.fault == care::PieceFault::recalled ||
                            found.fault == care::PieceFault::others_quarantined;
        if (of_lot) {
          add(FindingTopic::lot, of, side, item->code,
              piece_finding(found, day_, std::nullopt, false));
        }
      }
    }
  }

  const Clinic& clinic_;
  Date day_;
  ClinicIndex index_;
  std::shared_ptr<const care::SubstanceTable> substances_;
  /// Lots of which something was recalled or is held back: few, so that the rest is not looked at.
  std::set<std::pair<ItemCode, std::string>> in_doubt_;
  std::vector<PatientFinding> made_;
};

template <class Record>
std::vector<Record> copied(std::span<const Record> records) {
  return {records.begin(), records.end()};
}

}  // namespace

std::string_view topic_words(FindingTopic topic) {
  static constexpr std::array words{to_say("Sensitivity"), to_say("Size"), to_say("Suspension"),
                                    to_say("Lot")};
  return words.at(static_cast<std::size_t>(topic));
}

std::string shown_topic(FindingTopic topic) {
  return said(std::string{topic_words(topic)}.c_str());
}

std::vector<PatientFinding> findings_of(const Clinic& clinic, const PatientRef& patient, Date day) {
  const auto only = [&]<class Record>(const std::vector<Record>& records) {
    std::vector<Record> kept;
    std::ranges::copy_if(records, std::back_inserter(kept),
                         [&](const Record& each) { return each.patient == patient; });
    return kept;
  };
  const auto sensitivities = only(clinic.sensitivities);
  const auto decisions = only(clinic.decisions);
  const auto measurements = only(clinic.measurements);
  OfPatient of{patient, {}, sensitivities, decisions, measurements};
  of.worn.prostheses = only(clinic.prostheses);
  of.worn.units = only(clinic.units);
  return Finder{clinic, day}.with_outlook(of);
}

std::vector<PatientFinding> findings_of_everyone(const Clinic& clinic, Date day) {
  const ByPatient sensitivities{clinic.sensitivities};
  const ByPatient decisions{clinic.decisions};
  const ByPatient measurements{clinic.measurements};
  const ByPatient prostheses{clinic.prostheses};
  std::vector<Unit> in_use;
  std::ranges::copy_if(clinic.units, std::back_inserter(in_use),
                       [&](const Unit& unit) { return unit.in_use_on(day); });
  const ByPatient units{in_use};
  Finder finder{clinic, day};
  std::vector<PatientFinding> made;
  for (const Patient& patient : clinic.patients) {
    OfPatient of{patient.ref,
                 {},
                 sensitivities.of(patient.ref),
                 decisions.of(patient.ref),
                 measurements.of(patient.ref)};
    of.worn.prostheses = copied(prostheses.of(patient.ref));
    of.worn.units = copied(units.of(patient.ref));
    if (of.worn.units.empty()) continue;
    for (auto& each : finder.found(of)) {
      if (each.finding.gravity == Gravity::note || !each.side) continue;
      made.push_back(std::move(each));
    }
  }
  std::ranges::stable_sort(made, {}, [](const auto& each) { return each.finding.gravity; });
  return made;
}

}  // namespace sparewell::desk
