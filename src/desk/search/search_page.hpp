/// The search of the window: what was typed, what answers to it, and where Enter leads.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "desk/search/search_index.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

class SearchPage {
 public:
  SearchPage();

  /// What was typed before is looked for again.
  void show(SearchIndexPtr index);
  void type(std::string_view typed);

  /// A row's id is its number, from 0.
  [[nodiscard]] Table& table() { return table_; }
  [[nodiscard]] bool any_typed() const { return !typed_.empty(); }
  /// "3 found", "40 of 312 shown: type more", "Nothing answers to it ..."; what a label says that
  /// leads nowhere.
  [[nodiscard]] const std::string& words() const { return words_; }
  /// Where the row leads.
  [[nodiscard]] std::optional<Destination> there(const std::string& id) const;
  /// Where Enter in the box leads: to what the scanned label names, to the only hit, or to the only
  /// exact one; empty when a row has to be chosen, as after a label with a doubt.
  [[nodiscard]] std::optional<Destination> entered() const;

 private:
  void find();
  void read_label();
  [[nodiscard]] std::string count_words() const;

  SearchIndexPtr index_;
  std::string typed_;
  Hits hits_;
  std::string words_;
  bool doubtful_ = false;  ///< the hits are of a label that a person has to look at
  Table table_;
};

}  // namespace sparewell::desk
