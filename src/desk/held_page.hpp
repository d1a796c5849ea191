/// The list "Held back": what is needed and stands on none of today's orders, and why.
#pragma once

#include <optional>
#include <string>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

class HeldPage {
 public:
  HeldPage();

  void show(DayPtr day);

  /// Parts in use that are not ordered again because their patient should not get the same; the
  /// likeliest to be worn out soon first.
  [[nodiscard]] Table& needs() { return needs_; }
  /// Order lines for which the budget leaves nothing.
  [[nodiscard]] Table& lines() { return lines_; }
  /// Parts and lines together.
  [[nodiscard]] std::size_t count() const { return needs_.total() + lines_.total(); }
  /// "Held back (3)".
  [[nodiscard]] std::string title() const;
  [[nodiscard]] std::string needs_summary() const;
  [[nodiscard]] std::string lines_summary() const;
  /// Why the chosen part is held back; "" when `id` is none.
  [[nodiscard]] std::string words(const std::string& id) const;
  /// Position in Clinic::units; empty when `id` is none.
  [[nodiscard]] std::optional<std::size_t> unit_of(const std::string& id) const;
  [[nodiscard]] static std::string caution();
  /// The budget as it is typed: "500.00"; "" for none.
  [[nodiscard]] std::string budget_text() const;
  /// No budget where nothing is written. Refuses what is no amount in the clinic's currency.
  [[nodiscard]] Expected<std::optional<Money>> read_budget(const std::string& text) const;

 private:
  [[nodiscard]] const HeldNeed* need(const std::string& id) const;
  [[nodiscard]] TableRow need_row(const HeldNeed& need) const;
  [[nodiscard]] TableRow line_row(const supply::HeldLine& held) const;

  DayPtr day_;
  Table needs_;
  Table lines_;
};

}  // namespace sparewell::desk
