#include "desktop/dialogs/rules_dialog.hpp"

#include <wx/textctrl.h>

#include "desktop/text.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

RulesDialog::RulesDialog(wxWindow* parent, const desk::Day& day)
    : Form{parent, "Payers' rules",
           "What payers require and pay, each with where it is known from. The clinic's own rules "
           "go before those that the program is built with."},
      rules_{desk::listed_rules(day.clinic(), day.today())},
      table_{desk::rule_columns()} {
  table_.fill(desk::rule_rows(rules_));
  find_ = add_text("&Find", "", "Any words of the payer, the code or the rule");
  view_ = new TableView{this, table_, "Payers' rules"};
  view_->set_least_rows(14);
  view_->SetMinSize(FromDIP(wxSize{980, 380}));
  view_->set_empty_words("No rule answers to these words.");
  add_wide(view_, 1);
  const auto change = [this] {
    if (!view_->selected().empty()) chosen_ = rules_.at(std::stoul(view_->selected())).rule;
    EndModal(wxID_OK);
  };
  add_action("&New rule...", [this] { EndModal(wxID_OK); });
  add_action("C&hange this rule...", change);
  finish("C&lose", false);
  find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
    table_.find(from_wx(find_->GetValue()));
    view_->table_changed();
  });
  view_->when_chosen([change](const std::string&) { change(); });
  view_->table_changed();
  find_->SetFocus();
}

}  // namespace sparewell::desktop
