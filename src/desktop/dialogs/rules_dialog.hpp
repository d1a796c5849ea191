/// Payers' rules: all of them, and the one that is to be changed.
#pragma once

#include <optional>
#include <vector>

#include "desk/billing/payer_rules.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class TableView;

/// Ends with wxID_OK when a rule is to be set.
class RulesDialog : public Form {
 public:
  RulesDialog(wxWindow* parent, const desk::Day& day);
  /// The rule that the new one begins from; empty for none.
  [[nodiscard]] const std::optional<PayerRule>& chosen() const { return chosen_; }

 private:
  std::vector<desk::ListedRule> rules_;
  desk::Table table_;
  TableView* view_ = nullptr;
  wxTextCtrl* find_ = nullptr;
  wxTextCtrl* words_ = nullptr;  ///< of the chosen rule, in full
  std::optional<PayerRule> chosen_;
};

}  // namespace sparewell::desktop
