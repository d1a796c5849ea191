#include "desk/search/search_index.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/find_words.hpp"
#include "desk/part_words.hpp"
#include "desk/search/hit_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Between texts, so that nothing is found across two of them.
constexpr char border = '\n';

std::vector<std::string> words_of(std::string_view typed) {
  auto words = parts_of_list(folded(typed), " \t");
  // The longest is the rarest, as a rule.
  std::ranges::stable_sort(words, std::greater{}, &std::string::size);
  return words;
}

bool begins_a_word(std::string_view text, std::size_t at) {
  return at == 0 || text[at - 1] == ' ' || text[at - 1] == border;
}

}  // namespace

SearchIndex::SearchIndex(DayPtr day) : day_{std::move(day)} {
  const auto& clinic = day_->clinic();
  for (std::size_t i = 0; i < clinic.patients.size(); ++i) {
    const auto& patient = clinic.patients[i];
    add(HitKind::patient, i, patient.ref.text, full_name(patient) + " " + patient.place);
  }
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const auto& unit = clinic.units[i];
    if (unit.serial.empty() && unit.lot.empty()) continue;
    const bool by_serial = !unit.serial.empty();
    add(HitKind::part, i, by_serial ? unit.serial : unit.lot,
        (by_serial ? unit.lot + " " : std::string{}) + unit.item.text);
  }
  add_stock();
  add_papers();
}

void SearchIndex::add_stock() {
  const auto& clinic = day_->clinic();
  for (std::size_t i = 0; i < clinic.items.size(); ++i) {
    const auto& item = clinic.items[i];
    add(HitKind::item, i, item.code.text,
        item_words(item) + " " + item.supplier_item + " " + item.gtin);
  }
  for (std::size_t i = 0; i < clinic.shelf.size(); ++i) {
    const auto& level = clinic.shelf[i];
    if (level.lot.lot.empty() || level.quantity == 0) continue;
    add(HitKind::lot, i, level.lot.lot, level.lot.item.text + " " + level.place);
  }
}

void SearchIndex::add_papers() {
  const auto& clinic = day_->clinic();
  // An order, a claim and an invoice are found once, by their first line.
  std::set<std::pair<std::string_view, std::string_view>> seen;
  for (std::size_t i = 0; i < clinic.order_lines.size(); ++i) {
    const auto& line = clinic.order_lines[i];
    if (!seen.emplace(line.order_ref, line.supplier.text).second) continue;
    add(HitKind::order, i, line.order_ref, line.supplier.text);
  }
  seen.clear();
  for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) {
    const auto& line = clinic.claim_lines[i];
    if (!seen.emplace(line.claim_ref, line.patient.text).second) continue;
    add(HitKind::claim, i, line.claim_ref, line.payer);
  }
  seen.clear();
  for (std::size_t i = 0; i < clinic.invoice_lines.size(); ++i) {
    const auto& line = clinic.invoice_lines[i];
    if (!seen.emplace(line.invoice_ref, line.supplier.text).second) continue;
    add(HitKind::invoice, i, line.invoice_ref, line.supplier.text);
  }
}

void SearchIndex::add(HitKind kind, std::size_t position, std::string_view key,
                      std::string_view rest) {
  const auto begins = texts_.size();
  texts_ += folded(key);
  entries_.push_back({kind, position, begins, texts_.size()});
  texts_ += ' ';
  texts_ += folded(rest);
  texts_ += border;
}

std::string_view SearchIndex::text(std::size_t entry) const {
  const auto begins = entries_[entry].begins;
  const auto ends = entry + 1 < entries_.size() ? entries_[entry + 1].begins : texts_.size();
  return std::string_view{texts_}.substr(begins, ends - begins);
}

int SearchIndex::rank(std::size_t entry, const std::vector<std::string>& words) const {
  const auto whole = text(entry);
  const auto key = whole.substr(0, entries_[entry].key_ends - entries_[entry].begins);
  if (words.size() == 1 && key == words.front()) return 0;
  if (key.starts_with(words.front())) return 1;
  const bool all_begin = std::ranges::all_of(words, [&](const std::string& word) {
    for (auto at = whole.find(word); at != whole.npos; at = whole.find(word, at + 1)) {
      if (begins_a_word(whole, at)) return true;
    }
    return false;
  });
  return all_begin ? 2 : 3;
}

Hits SearchIndex::find(std::string_view typed, std::size_t most) const {
  const auto words = words_of(typed);
  Hits found;
  if (words.empty()) return found;
  std::vector<std::tuple<int, HitKind, std::size_t>> ranked;
  const std::string_view texts{texts_};
  std::size_t from = 0;
  for (;;) {
    const auto at = texts.find(words.front(), from);
    if (at == texts.npos) break;
    const auto next = std::ranges::upper_bound(entries_, at, {}, &Entry::begins);
    const auto entry = static_cast<std::size_t>(next - entries_.begin()) - 1;
    const auto whole = text(entry);
    from = entries_[entry].begins + whole.size();
    const bool all = std::ranges::all_of(
        words, [&](const std::string& word) { return whole.find(word) != whole.npos; });
    if (all) ranked.emplace_back(rank(entry, words), entries_[entry].kind, entry);
  }
  const auto kept = std::min(most, ranked.size());
  std::ranges::partial_sort(ranked, ranked.begin() + static_cast<std::ptrdiff_t>(kept));
  found.more = ranked.size() - kept;
  for (std::size_t i = 0; i < kept; ++i) {
    found.hits.push_back(hit(entries_[std::get<2>(ranked[i])]));
    found.hits.back().exact = std::get<0>(ranked[i]) == 0;
  }
  return found;
}

Hit SearchIndex::hit(const Entry& entry) const {
  switch (entry.kind) {
    case HitKind::patient:
      return patient_hit(*day_, entry.position);
    case HitKind::part:
      return part_hit(*day_, entry.position);
    case HitKind::item:
      return item_hit(*day_, entry.position);
    case HitKind::lot:
      return lot_hit(*day_, entry.position);
    case HitKind::order:
      return order_hit(*day_, entry.position);
    case HitKind::claim:
      return claim_hit(*day_, entry.position);
    case HitKind::invoice:
      return invoice_hit(*day_, entry.position);
  }
  return {};
}

}  // namespace sparewell::desk
