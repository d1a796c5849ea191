/// The page "Order today": what must be ordered, why, and what it comes to.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"
#include "supply/what_if.hpp"

namespace sparewell::desk {

/// Everything the page says about one chosen line.
struct OrderDetail {
  std::string title;            ///< item and description
  std::string when;             ///< what happens if it is not ordered today
  std::string why;              ///< a few sentences
  std::vector<TableRow> needs;  ///< who needs it; for need_columns()
};

class OrderPage {
 public:
  OrderPage();

  void show(DayPtr day);
  /// Shows these orders beside today's: each line says what its quantity would be, and is set apart
  /// where that differs. nullptr: today's again.
  void show_otherwise(std::shared_ptr<const supply::DecidedOrders> orders);

  /// The lines, by supplier and item. Every one is due: the next order day would be too late.
  [[nodiscard]] Table& lines() { return lines_; }
  [[nodiscard]] const Table& lines() const { return lines_; }
  /// One row a supplier, and one for all of them when there are several.
  [[nodiscard]] const Table& totals() const { return totals_; }
  /// One sentence: how much is to be ordered, or that nothing is.
  [[nodiscard]] const std::string& headline() const { return headline_; }
  /// Parts and lines that are needed and not ordered; see held_page.hpp.
  [[nodiscard]] std::size_t held_back() const;
  /// What stands where the lines would be when none is shown.
  [[nodiscard]] std::string empty_words() const;
  /// Today's lines, whatever is shown beside them.
  [[nodiscard]] std::size_t today_count() const {
    return day_ ? day_->assessment().proposal.size() : 0;
  }
  /// True when there is something to write workbooks of.
  [[nodiscard]] bool anything() const { return today_count() > 0; }
  /// `id` is that of a line; a default detail when there is no such line any more.
  /// The id of the first line of this item; "" for none.
  [[nodiscard]] std::string line_of(const ItemCode& item) const;
  [[nodiscard]] OrderDetail detail(const std::string& id) const;

  [[nodiscard]] static std::vector<Column> need_columns();

 private:
  void fill_lines();
  [[nodiscard]] const supply::ProposalLine* line(const std::string& id) const;

  DayPtr day_;
  std::shared_ptr<const supply::DecidedOrders> otherwise_;
  Table lines_;
  Table totals_;
  std::string headline_;
};

}  // namespace sparewell::desk
