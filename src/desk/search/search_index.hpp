/// Everything that a person looks for by a word or a number: patients, parts, items, lots, orders,
/// claims and invoices.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "desk/day.hpp"
#include "desk/destination.hpp"

namespace sparewell::desk {

enum class HitKind { patient, part, item, lot, order, claim, invoice };
/// "Patient", "Part", "Item", "Lot on the shelf" ...
[[nodiscard]] std::string hit_kind_words(HitKind kind);

struct Hit {
  HitKind kind = HitKind::patient;
  std::string title;    ///< "P-0012  Ana Field", "serial 1005495"
  std::string context;  ///< what it belongs to, and how it stands
  Destination there;
  bool exact = false;  ///< what was typed is its reference, number or code as a whole
};

struct Hits {
  std::vector<Hit> hits;  ///< the best first
  std::size_t more = 0;   ///< found beside them
};

/// Immutable, and safe in any thread. Holds the texts of all entries, folded, one after the other,
/// and looks through them: with 10,000 patients that is some megabytes, which takes milliseconds
/// and finds what stands inside a word too.
class SearchIndex {
 public:
  explicit SearchIndex(DayPtr day);

  /// Entries that hold every typed word. Exact ones come first, then those with a word that begins
  /// so; among those patients, parts, items and so on. Nothing typed finds nothing.
  [[nodiscard]] Hits find(std::string_view typed, std::size_t most = 40) const;
  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  [[nodiscard]] const Day& day() const { return *day_; }

 private:
  struct Entry {
    HitKind kind;
    std::size_t position;  ///< in the clinic's list of its kind
    std::size_t begins;    ///< of its text in texts_; it ends where the next one begins
    std::size_t key_ends;  ///< its own reference, number or code ends here, then what describes it
  };
  void add(HitKind kind, std::size_t position, std::string_view key, std::string_view rest);
  void add_stock();
  void add_papers();
  /// How well an entry answers, the best first.
  enum Rank : std::size_t { exact, key_begins, words_begin, inside, rank_count };
  [[nodiscard]] std::string_view text(std::size_t entry) const;
  /// The entry to which this position of texts_ belongs; not before `from`.
  [[nodiscard]] std::size_t entry_at(std::size_t position, std::size_t from) const;
  [[nodiscard]] Rank rank(std::size_t entry, std::string_view typed,
                          const std::vector<std::string>& words) const;
  [[nodiscard]] Hit hit(const Entry& entry) const;

  DayPtr day_;
  std::string texts_;
  std::vector<Entry> entries_;
};

using SearchIndexPtr = std::shared_ptr<const SearchIndex>;

}  // namespace sparewell::desk
