#include "desk/visit_findings.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "care/worn.hpp"
#include "clinic/say.hpp"
#include "desk/patient_findings.hpp"
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
    of_checks();
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

  /// What the checks find about what is worn, with side and part in front.
  void of_checks() {
    for (const auto& each : findings_of(day_.clinic(), patient_, visit_)) {
      if (each.finding.gravity == Gravity::note || !each.side) continue;
      auto where = capitalised(shown_word(*each.side));
      if (each.finding.key == "measurement_old") {
        // Once for each side, however many parts it is asked for.
        add(each.finding.key, Gravity::ask,
            say("{}: last measured more than six months before; measure at this visit.", where));
        continue;
      }
      if (!each.item.empty()) where += fmt::format(", {}", each.item.text);
      add(each.finding.key, each.finding.gravity, fmt::format("{}: {}", where, each.finding.words));
    }
  }

  void on_side(Side side) {
    const auto worn = care::worn_on(day_.clinic(), day_.index(), patient_, side, visit_);
    const auto name = capitalised(shown_word(side));
    if (worn.without_item > 0) {
      add("not_in_catalogue", Gravity::ask,
          say_n(
              "{}: {} part is in use that the catalogue does not have; nothing is checked of it.",
              "{}: {} parts are in use that the catalogue does not have; nothing is checked of it.",
              static_cast<unsigned long>(worn.without_item), name,
              number_words(worn.without_item)));
    }
    if (worn.prosthesis == nullptr && !worn.items.empty()) {
      add("no_prosthesis", Gravity::ask,
          say("{}: parts are in use, but no prosthesis is recorded.", name));
    }
  }

  void of_unit(std::size_t position) {
    const auto& unit = day_.clinic().units[position];
    if (!unit.in_use_on(visit_)) return;
    const auto* forecast = day_.forecast(position);
    if (forecast && forecast->use_by && forecast->use_by->day < visit_) {
      add("expired", Gravity::stops,
          say("{}, {}: its use-by date, {}, has passed by the visit.",
              capitalised(shown_word(unit.side)), unit.item.text,
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
            say("Worn: {} Look at the part closely.", early_endings_words(each)));
      }
    }
  }

  void early_endings() {
    for (const auto& early : day_.surprises().units) {
      const auto& unit = day_.clinic().units[early.unit];
      if (unit.patient != patient_ || !unit.ended_on || *unit.ended_on + recent < visit_) continue;
      add("early_ending", Gravity::note,
          say("{}, {}: wore out on {}, far earlier than such parts do; ask how it was used and "
              "look at the socket.",
              capitalised(shown_word(unit.side)), unit.item.text, date_words(*unit.ended_on)));
    }
  }

  const Day& day_;
  const PatientRef& patient_;
  Date visit_;
  std::vector<VisitFinding> found_;
};

}  // namespace

std::vector<VisitFinding> visit_findings(const Day& day, const PatientRef& patient, Date visit) {
  return Finder{day, patient, visit}.all();
}

std::string visit_gravity_words(Gravity gravity) {
  if (gravity == Gravity::stops) return said("Act");
  return gravity == Gravity::ask ? said("Look") : said("Note");
}

}  // namespace sparewell::desk
