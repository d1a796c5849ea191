#include "supply/successors.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <unordered_set>

namespace sparewell::supply {
namespace {

bool is_changing(EndReason reason) {
  return std::ranges::find(changing_reasons, reason) != changing_reasons.end();
}

bool sizes_overlap(const Item& a, const Item& b) {
  const bool has_a = a.size_min_cm && a.size_max_cm;
  const bool has_b = b.size_min_cm && b.size_max_cm;
  if (!has_a || !has_b) return !has_a && !has_b && a.size_label == b.size_label;
  return std::max(*a.size_min_cm, *b.size_min_cm) < std::min(*a.size_max_cm, *b.size_max_cm);
}

/// Items in the sizes of one line of a maker; `from` among them.
std::vector<const Item*> sizes_of(const Item& from, const std::vector<const Item*>& alike) {
  std::vector<const Item*> line;
  for (const Item* item : alike) {
    if (item->material == from.material && item->supplier == from.supplier && item->size_min_cm &&
        item->size_at_cm == from.size_at_cm) {
      line.push_back(item);
    }
  }
  std::vector<const Item*> same_words;
  const std::string words = description_without_size(from);
  std::ranges::copy_if(line, std::back_inserter(same_words),
                       [&](const Item* item) { return description_without_size(*item) == words; });
  return same_words.size() > 1 ? same_words : line;
}

/// A unit in the history of one kind on one side of one patient.
struct Worn {
  const Unit* unit;
  bool is_successor = false;  ///< of one that ended before
};

}  // namespace

Successors::Successors(const Clinic& clinic, Date today) {
  for (const Item& item : clinic.items) {
    items_.emplace(item.code, &item);
    alike_[{item.kind, item.attachment, item.thread}].push_back(&item);
  }
  learn(clinic, today);
}

void Successors::learn(const Clinic& clinic, Date today) {
  std::unordered_set<PatientRef> changed;
  for (const Unit& unit : clinic.units) {
    if (unit.ended_on && unit.end_reason && is_changing(*unit.end_reason)) {
      changed.insert(unit.patient);
    }
  }
  std::map<std::tuple<PatientRef, Side, Kind>, std::vector<Worn>> worn;
  for (const Unit& unit : clinic.units) {
    const auto item = items_.find(unit.item);
    if (item == items_.end()) continue;
    ++issued_[unit.item];
    if (!changed.contains(unit.patient)) continue;
    worn[{unit.patient, unit.side, item->second->kind}].push_back({&unit});
  }
  for (auto& [of, units] : worn) {
    std::ranges::sort(units, {}, [](const Worn& w) {
      return std::tie(w.unit->issued_on, w.unit->item, w.unit->lot, w.unit->serial, w.unit->copy);
    });
    for (const Worn& old : units) {
      const Unit& left = *old.unit;
      if (!left.ended_on || !left.end_reason || !is_changing(*left.end_reason)) continue;
      const Date last = *left.ended_on + days{successor_days};
      // Two parts exchanged on one day are followed by two: each issue counts once.
      const auto next = std::ranges::find_if(units, [&](const Worn& w) {
        return !w.is_successor && w.unit != &left && w.unit->issued_on >= *left.ended_on &&
               w.unit->issued_on <= last;
      });
      if (next == units.end() && last > today) continue;  // may still follow
      Changes& changes = changes_[{left.item, *left.end_reason}];
      ++changes.seen;
      if (next == units.end()) continue;
      next->is_successor = true;
      ++changes.to[next->unit->item];
    }
  }
}

void Successors::share_out(Shares& shares, const std::vector<const Item*>& items,
                           double share) const {
  const auto weight = [&](const Item* item) {
    const auto found = issued_.find(item->code);
    return 1.0 + (found == issued_.end() ? 0 : found->second);
  };
  double sum = 0;
  for (const Item* item : items) sum += weight(item);
  for (const Item* item : items) shares[item->code] += share * weight(item) / sum;
}

void Successors::add_neighbour(Shares& shares, const Item& from, bool smaller, double share) const {
  std::vector<const Item*> nearest;
  for (const Item* item : sizes_of(from, alike_.at({from.kind, from.attachment, from.thread}))) {
    const double step = *item->size_min_cm - *from.size_min_cm;
    if (smaller ? step >= 0 : step <= 0) continue;
    const double so_far = nearest.empty() ? 0 : *nearest[0]->size_min_cm - *from.size_min_cm;
    if (!nearest.empty() && std::abs(step) > std::abs(so_far)) continue;
    if (!nearest.empty() && std::abs(step) < std::abs(so_far)) nearest.clear();
    nearest.push_back(item);
  }
  share_out(shares, nearest, share);
}

Successors::Shares Successors::rule(const Item& from, EndReason reason) const {
  Shares shares;
  if (reason == EndReason::resized) {
    if (!from.size_min_cm) return shares;
    add_neighbour(shares, from, true, share_of_smaller);
    add_neighbour(shares, from, false, 1 - share_of_smaller);
    return shares;
  }
  std::vector<const Item*> fitting;
  for (const Item* item : alike_.at({from.kind, from.attachment, from.thread})) {
    if (item == &from || !sizes_overlap(*item, from)) continue;
    if (reason == EndReason::reaction && item->material == from.material) continue;
    fitting.push_back(item);
  }
  share_out(shares, fitting, 1);
  return shares;
}

std::vector<Successor> Successors::of(const ItemCode& item, EndReason reason) const {
  const auto from = items_.find(item);
  if (from == items_.end() || !is_changing(reason)) return {};
  Shares counts;
  for (const auto& [code, share] : rule(*from->second, reason)) counts[code] = rule_weight * share;
  double weight = rule_weight;
  const auto seen = changes_.find({item, reason});
  if (seen != changes_.end()) {
    weight += seen->second.seen;
    for (const auto& [code, count] : seen->second.to) counts[code] += count;
  }
  std::vector<Successor> made;
  for (const auto& [code, count] : counts) {
    if (count > 0) made.push_back({code, count / weight});
  }
  return made;
}

}  // namespace sparewell::supply
