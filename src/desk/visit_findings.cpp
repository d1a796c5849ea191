#include "desk/visit_findings.hpp"

#include <algorithm>
#include <array>
#include <set>

#include <fmt/format.h>

#include "desk/issue_words.hpp"
#include "desk/part_words.hpp"
#include "desk/substance_table.hpp"
#include "desk/surprise_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

constexpr std::array sides{Side::left, Side::right};
/// Early endings of the past year are still worth a word (our choice).
constexpr days recent{365};

class Finder {
 public:
  Finder(const Day& day, const PatientRef& patient, Date visit)
      : day_{day}, patient_{patient}, visit_{visit} {}

  std::vector<VisitFinding> all() {
    for (const Side side : sides) on_side(side);
    for (const auto unit : day_.units_of(patient_)) of_unit(unit);
    early_endings();
    std::ranges::stable_sort(found_, {}, &VisitFinding::gravity);
    return std::move(found_);
  }

 private:
  void add(const std::string& key, Gravity gravity, std::string words) {
    const bool told = std::ranges::any_of(found_, [&](const auto& f) { return f.words == words; });
    if (!told) found_.push_back({key, gravity, std::move(words)});
  }

  /// With the part in front: "Left, LS10-28: ...".
  void add(Side side, const Item& item, const IssueFinding& finding) {
    add(finding.key, finding.gravity,
        fmt::format("{}, {}: {}", capitalised(std::string{word(side)}), item.code.text,
                    finding.words));
  }

  void on_side(Side side) {
    const auto worn = care::worn_on(day_.clinic(), day_.index(), patient_, side, visit_);
    std::set<const Item*> seen;
    for (const auto* item : worn.items) {
      if (!seen.insert(item).second) continue;
      sensitivities(side, *item);
      size(side, *item);
      attachment(side, *item, worn);
    }
    const auto name = capitalised(std::string{word(side)});
    if (worn.without_item > 0) {
      add("not_in_catalogue", Gravity::ask,
          fmt::format("{}: {} in use that the catalogue does not have; nothing is checked of it.",
                      name, count_words(worn.without_item, "part is", "parts are")));
    }
    if (worn.prosthesis == nullptr) {
      if (worn.items.empty()) return;
      return add("no_prosthesis", Gravity::ask,
                 fmt::format("{}: parts are in use, but no prosthesis is recorded.", name));
    }
    missing(name, worn);
  }

  void missing(const std::string& side, const care::Worn& worn) {
    // An item that does nothing in the suspension: what is missing then is missing now.
    Item nothing;
    nothing.kind = Kind::sock;
    std::vector<std::string> names;
    for (const auto function : care::missing_after(nothing, worn)) {
      names.push_back(function_words(function));
    }
    if (names.empty()) return;
    add("part_missing", Gravity::ask,
        fmt::format("{}: {} suspension needs what is not recorded as worn: {}.", side,
                    word(worn.prosthesis->suspension), list_words(names)));
  }

  void sensitivities(Side side, const Item& item) {
    for (const auto& verdict : care::check_sensitivities(
             item, patient_, day_.clinic().sensitivities, built_in_substances())) {
      if (verdict.verdict >= care::Verdict::none_known) continue;
      add(side, item, sensitivity_finding(verdict, item));
    }
  }

  void size(Side side, const Item& item) {
    const auto check = care::check_fit(item, patient_, side, day_.clinic().measurements, visit_);
    const auto name = capitalised(std::string{word(side)});
    if (check.fit == care::Fit::not_known) {
      return add("size_not_known", Gravity::ask,
                 check.at_cm
                     ? fmt::format("{}: no measurement at {:g} cm tells whether the size of {} "
                                   "fits; measure at this visit.",
                                   name, *check.at_cm, item.code.text)
                     : fmt::format("{}: whether the size of {} fits is not known; the catalogue "
                                   "does not say where it is measured.",
                                   name, item.code.text));
    }
    if (check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger) {
      return add(side, item, fit_finding(check, item, side));
    }
    if (check.old) {
      add("measurement_old", Gravity::ask,
          fmt::format("{}: last measured on {}, more than six months before; measure at this "
                      "visit.",
                      name, date_words(check.measured_on, "no day")));
    }
  }

  void attachment(Side side, const Item& item, const care::Worn& worn) {
    const auto suspension = worn.prosthesis ? worn.prosthesis->suspension : Suspension::pin;
    for (const auto& mismatch : care::check_attachment(item, worn)) {
      // Two parts that do not go together are found from either end.
      const auto* other = mismatch.other;
      if (other != nullptr && !told_pairs_.insert(std::minmax(&item, other)).second) continue;
      add(side, item, attachment_finding(mismatch, item, suspension));
    }
  }

  void of_unit(std::size_t position) {
    const auto& unit = day_.clinic().units[position];
    if (!unit.in_use_on(visit_)) return;
    const auto* forecast = day_.forecast(position);
    if (forecast && forecast->use_by && forecast->use_by->day < visit_) {
      add("expired", Gravity::stops,
          fmt::format("{}, {}: its use-by date, {}, has passed by the visit.",
                      capitalised(std::string{word(unit.side)}), unit.item.text,
                      date_words(forecast->use_by->day)));
    }
    const auto& surprises = day_.surprises();
    const auto flagged = [&](const wear::EarlyEndings& each) {
      return each.flagged && each.item == unit.item && (each.lot.empty() || each.lot == unit.lot);
    };
    for (const auto* tested : {&surprises.lots, &surprises.items}) {
      for (const auto& each : *tested) {
        if (!flagged(each)) continue;
        add("flagged", Gravity::ask,
            fmt::format("Worn: {} Look at the part closely.", early_endings_words(each)));
      }
    }
  }

  void early_endings() {
    for (const auto& early : day_.surprises().units) {
      const auto& unit = day_.clinic().units[early.unit];
      if (unit.patient != patient_ || !unit.ended_on || *unit.ended_on + recent < visit_) continue;
      add("early_ending", Gravity::note,
          fmt::format("{}, {}: wore out on {}, far earlier than such parts do; ask how it was used "
                      "and look at the socket.",
                      capitalised(std::string{word(unit.side)}), unit.item.text,
                      date_words(*unit.ended_on)));
    }
  }

  const Day& day_;
  const PatientRef& patient_;
  Date visit_;
  std::vector<VisitFinding> found_;
  std::set<std::pair<const Item*, const Item*>> told_pairs_;
};

}  // namespace

std::vector<VisitFinding> visit_findings(const Day& day, const PatientRef& patient, Date visit) {
  return Finder{day, patient, visit}.all();
}

std::string visit_gravity_words(Gravity gravity) {
  if (gravity == Gravity::stops) return "Act";
  return gravity == Gravity::ask ? "Look" : "Note";
}

}  // namespace sparewell::desk
