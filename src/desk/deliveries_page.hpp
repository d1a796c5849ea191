/// The page "Deliveries": all orders, what is still to come of them, and what can be done.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/order_book.hpp"
#include "desk/stored_order.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// What can be done with the chosen order.
struct OrderActions {
  bool place = false;
  bool approve = false;
  bool amend = false;
  bool back_order = false;
  bool cancel = false;
  bool reprint = false;
};

struct DeliveryDetail {
  std::string title;
  std::string summary;          ///< placed, approved, revisions: sentences
  std::vector<TableRow> lines;  ///< for line_columns(); a row's id is the item's code
};

class DeliveriesPage {
 public:
  /// Bit of Table::require: orders that are not received and not cancelled.
  static constexpr unsigned is_open = 1;

  DeliveriesPage();

  void show(DayPtr day);
  [[nodiscard]] Table& table() { return table_; }
  [[nodiscard]] std::string count_shown() const;
  [[nodiscard]] std::string empty_words() const;
  /// nullptr when no order has this id.
  [[nodiscard]] const OrderView* view(const std::string& id) const;
  [[nodiscard]] static std::string id_of(const OrderName& name);
  [[nodiscard]] OrderName name(const std::string& id) const;
  [[nodiscard]] DeliveryDetail detail(const std::string& id) const;
  [[nodiscard]] OrderActions actions(const std::string& id) const;
  /// "Revision 2, 25 Nov 2026, anna: fewer are needed", the latest first; for a choice.
  [[nodiscard]] std::vector<std::string> revisions(const std::string& id) const;

  [[nodiscard]] static std::vector<Column> line_columns();

 private:
  [[nodiscard]] TableRow order_row(const OrderView& view) const;
  [[nodiscard]] std::vector<const OrderRevision*> kept(const OrderView& view) const;

  DayPtr day_;
  std::vector<OrderView> views_;
  Table table_;
};

}  // namespace sparewell::desk
