/// The page "Billing": findings that need a person, both sides beside each other, and the answers.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "billing/worklist.hpp"
#include "desk/billing/both_sides.hpp"
#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// The compared books of one day; nullptr while they have not been compared.
using WorklistPtr = std::shared_ptr<const std::vector<billing::WorkItem>>;

struct FindingDetail {
  std::string title;
  std::string what;      ///< both sides in a sentence
  std::string settling;  ///< likely cause, and what settles it
  std::string history;   ///< the answers so far, a line each; "" for none
  BothSides sides;
};

class BillingPage {
 public:
  // What is shown, as the choice on the page lists it.
  enum class Shown { open, waiting, settled, all };

  BillingPage();

  /// Without compared books the page says that they have to be compared.
  void show(DayPtr day, WorklistPtr items);
  void show_only(Shown shown, std::optional<billing::Book> book);
  [[nodiscard]] Table& table() { return table_; }
  [[nodiscard]] std::string empty_words() const;
  /// "31 findings are open: 1,234.50 EUR to bill or to be given, ... 4 wait for an answer."
  [[nodiscard]] std::string summary() const;
  /// nullptr when no finding has this id.
  [[nodiscard]] const billing::WorkItem* item(const std::string& id) const;
  [[nodiscard]] FindingDetail detail(const std::string& id) const;

  /// In the order of Shown.
  [[nodiscard]] static std::vector<std::string> shown_choices();
  /// "All books" and the books in their order.
  [[nodiscard]] static std::vector<std::string> book_choices();

 private:
  [[nodiscard]] TableRow row(const billing::WorkItem& item) const;

  DayPtr day_;
  WorklistPtr items_;
  Table table_;
};

/// Whom or what a finding is about: "P-0012  Ana Field", or the order and the supplier.
[[nodiscard]] std::string about_words(const Day& day, const billing::BillingFinding& finding);
/// "Asked on ...", "Changed since it was answered", "Ask again"; "" when nobody answered.
[[nodiscard]] std::string state_words(const billing::WorkItem& item);

}  // namespace sparewell::desk
