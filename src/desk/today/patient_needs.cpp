#include "desk/today/patient_needs.hpp"

#include <algorithm>
#include <unordered_map>

#include "clinic/say.hpp"
#include "desk/patient_findings.hpp"
#include "desk/shelf_page.hpp"
#include "desk/visit_near_end.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

/// "left LN01-28"
std::string side_and_item(const Unit& unit) {
  return say("{0} {1}", shown_word(unit.side), unit.item.text);
}

class Gatherer {
 public:
  explicit Gatherer(const Day& day) : day_{day}, today_{day.today()}, shelf_{shelf_counts(day)} {
    for (auto& each : findings_of_everyone(day.clinic(), today_)) {
      findings_[each.patient].push_back(std::move(each));
    }
    for (const auto& reaction : day.clinic().reactions) {
      if (!reaction.ended_on) reactions_[reaction.patient].push_back(&reaction);
    }
  }

  std::vector<PatientNeeds> all() {
    std::vector<PatientNeeds> made;
    for (const auto& patient : day_.clinic().patients) {
      needs_ = {};
      needs_.patient = patient.ref;
      if (patient.next_visit && *patient.next_visit >= today_) needs_.visit = patient.next_visit;
      of_checks();
      for (const auto unit : day_.units_of(patient.ref)) of_unit(unit);
      of_lives();
      of_reactions();
      if (needs_.reasons.empty() && needs_.to_look_at == 0) continue;
      std::ranges::stable_sort(needs_.reasons, {}, &PatientReason::urgency);
      made.push_back(std::move(needs_));
    }
    return made;
  }

 private:
  /// A visit of the next days gives the occasion: on its day, or this week.
  [[nodiscard]] bool comes_soon() const {
    return needs_.visit && *needs_.visit <= today_ + days{days_ahead};
  }
  [[nodiscard]] Urgency of_visit() const {
    return needs_.visit == today_ ? Urgency::today : Urgency::this_week;
  }
  void add(Urgency urgency, std::string words, bool finding = false,
           std::optional<std::size_t> unit = {}) {
    // Parts alike are told once.
    if (std::ranges::find(needs_.reasons, words, &PatientReason::words) != needs_.reasons.end()) {
      return;
    }
    needs_.reasons.push_back({urgency, std::move(words), finding, unit});
  }

  void of_checks() {
    const auto found = findings_.find(needs_.patient);
    if (found == findings_.end()) return;
    std::vector<std::string> acts;
    std::vector<std::string> looks;
    for (const auto& each : found->second) {
      auto& named = each.finding.gravity == Gravity::stops ? acts : looks;
      auto topic = shown_topic(each.topic);
      if (!each.item.empty()) topic = say("{} of {}", topic, each.item.text);
      if (std::ranges::find(named, topic) == named.end()) named.push_back(std::move(topic));
    }
    if (!acts.empty()) {
      add(Urgency::today,
          say_n("{} finding to act on ({})", "{} findings to act on ({})", acts.size(), acts.size(),
                some_words(acts)),
          true);
    }
    if (looks.empty()) return;
    if (comes_soon()) {
      add(of_visit(),
          say_n("{} finding to look at ({})", "{} findings to look at ({})", looks.size(),
                looks.size(), some_words(looks)),
          true);
    } else {
      needs_.to_look_at = static_cast<int>(looks.size());
    }
  }

  /// Whether a piece of the item is there, coming or on today's orders.
  [[nodiscard]] bool spare_of(const ItemCode& item) const {
    const auto count = shelf_.find(item);
    if (day_.proposed(item) != nullptr) return true;
    return count != shelf_.end() &&
           count->second.usable + count->second.in_transit + count->second.on_order > 0;
  }

  void of_unit(std::size_t position) {
    const auto& unit = day_.clinic().units[position];
    const auto* forecast = day_.forecast(position);
    if (forecast == nullptr || !unit.in_use_on(today_)) return;
    const auto where = side_and_item(unit);
    if (forecast->use_by && forecast->use_by->day < today_) {
      add(Urgency::overdue,
          say("{} is past its use-by date, {}", where, date_words(forecast->use_by->day)), false,
          position);
    }
    if (forecast->order_by && *forecast->order_by < today_ && !spare_of(unit.item)) {
      add(Urgency::overdue,
          say("{} should have been ordered by {}, and no piece is on the shelf or on order", where,
              date_words(*forecast->order_by)),
          false, position);
    }
  }

  /// Parts likelier than not worn out within near_end_days and before the patient comes.
  void of_lives() {
    std::vector<std::string> worn;
    std::optional<std::size_t> first;
    for (const auto position : day_.units_of(needs_.patient)) {
      const auto* forecast = day_.forecast(position);
      if (forecast == nullptr || !forecast->p50) continue;
      const Date until = std::min(needs_.visit.value_or(Date::max()), today_ + near_end_days);
      if (*forecast->p50 > until) continue;
      if (!first || *forecast->p50 < *day_.forecast(*first)->p50) first = position;
      const auto& unit = day_.clinic().units[position];
      auto name = side_and_item(unit);
      if (std::ranges::find(worn, name) == worn.end()) worn.push_back(std::move(name));
    }
    if (worn.empty()) return;
    if (needs_.visit) {
      add(comes_soon() ? of_visit() : Urgency::this_week,
          say_n("{1} is likely worn out before the visit",
                "{1} are likely worn out before the visit", worn.size(), worn.size(),
                some_words(worn)),
          false, first);
    } else {
      add(Urgency::this_week,
          say_n("no visit is planned, and {1} is likely worn out within {2} days",
                "no visit is planned, and {1} are likely worn out within {2} days", worn.size(),
                worn.size(), some_words(worn), near_end_days.count()),
          false, first);
    }
  }

  void of_reactions() {
    const auto found = reactions_.find(needs_.patient);
    if (found == reactions_.end()) return;
    for (const auto* reaction : found->second) {
      add(comes_soon() ? of_visit() : Urgency::this_week,
          say("a reaction of the skin since {} is not recorded as healed",
              date_words(reaction->began_on)));
    }
  }

  const Day& day_;
  Date today_;
  std::unordered_map<ItemCode, ShelfCount> shelf_;
  std::unordered_map<PatientRef, std::vector<PatientFinding>> findings_;
  std::unordered_map<PatientRef, std::vector<const Reaction*>> reactions_;
  PatientNeeds needs_;
};

}  // namespace

std::vector<PatientNeeds> patient_needs(const Day& day) {
  return Gatherer{day}.all();
}

}  // namespace sparewell::desk
