#include "desk/search/search_index.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <set>

#include "desk/find_words.hpp"
#include "desk/part_words.hpp"
#include "desk/search/hit_words.hpp"
#include "desk/wording.hpp"
#include "exchange/text.hpp"

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
  return at == 0 || text[at - 1] == ' ';
}

/// Whether one of the words of `text` begins with `word`.
bool has_word_that_begins(std::string_view text, std::string_view word) {
  for (auto at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
    if (begins_a_word(text, at)) return true;
  }
  return false;
}

/// As string_view::find, which looks at one letter after another where the first one is common.
std::size_t find_from(std::string_view text, std::string_view word, std::size_t from) {
  const auto* found = memmem(text.data() + from, text.size() - from, word.data(), word.size());
  if (found == nullptr) return text.npos;
  return static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
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

std::size_t SearchIndex::entry_at(std::size_t position, std::size_t from) const {
  // The next one found is near, as a rule, so steps grow from there.
  std::size_t step = 1;
  while (from + step < entries_.size() && entries_[from + step].begins <= position) {
    from += step;
    step *= 2;
  }
  const auto begin = entries_.begin() + static_cast<std::ptrdiff_t>(from);
  const auto end =
      entries_.begin() + static_cast<std::ptrdiff_t>(std::min(from + step, entries_.size()));
  const auto next = std::ranges::upper_bound(begin, end, position, {}, &Entry::begins);
  return static_cast<std::size_t>(next - entries_.begin()) - 1;
}

SearchIndex::Rank SearchIndex::rank(std::size_t entry, std::string_view typed,
                                    const std::vector<std::string>& words) const {
  const auto whole = text(entry);
  const auto key = whole.substr(0, entries_[entry].key_ends - entries_[entry].begins);
  if (key == typed) return exact;
  if (key.starts_with(words.front())) return key_begins;
  const bool all_begin = std::ranges::all_of(
      words, [&](const std::string& word) { return has_word_that_begins(whole, word); });
  return all_begin ? words_begin : inside;
}

Hits SearchIndex::find(std::string_view typed, std::size_t most) const {
  const auto words = words_of(typed);
  Hits found;
  if (words.empty()) return found;
  const auto folded_typed = folded(typed);
  const auto whole_typed = exchange::trimmed(folded_typed);
  // Entries stand in the order of their kinds, so that the first ones of each rank are the best.
  std::array<std::vector<std::size_t>, rank_count> best;
  std::size_t count = 0;
  std::size_t entry = 0;
  const std::string_view texts{texts_};
  for (std::size_t from = 0; from < texts.size();) {
    const auto at = find_from(texts, words.front(), from);
    if (at == texts.npos) break;
    entry = entry_at(at, entry);
    const auto whole = text(entry);
    from = entries_[entry].begins + whole.size();
    const bool all = std::all_of(words.begin() + 1, words.end(), [&](const std::string& word) {
      return whole.find(word) != whole.npos;
    });
    if (!all) continue;
    ++count;
    auto& alike = best[rank(entry, whole_typed, words)];
    if (alike.size() < most) alike.push_back(entry);
  }
  for (std::size_t rank = 0; rank < rank_count; ++rank) {
    for (const auto position : best[rank]) {
      if (found.hits.size() == most) break;
      found.hits.push_back(hit(entries_[position]));
      found.hits.back().exact = rank == exact;
    }
  }
  found.more = count - found.hits.size();
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
