#include "desktop/dialogs/rules_dialog.hpp"

#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

RulesDialog::RulesDialog(wxWindow* parent, const desk::Day& day)
    : Form{parent, said("Payers' rules"),
           said("What payers require and pay, each with where it is known from. The clinic's own "
                "rules go before those that the program is built with.")},
      rules_{desk::listed_rules(day.clinic(), day.today())},
      table_{desk::rule_columns()} {
  table_.fill(desk::rule_rows(rules_));
  find_ = add_text(said("&Find"), "", said("Any words of the payer, the code or the rule"));
  view_ = new TableView{this, table_, said("Payers' rules")};
  view_->set_least_rows(11);
  view_->SetMinSize(FromDIP(wxSize{980, 320}));
  view_->set_empty_words(said("No rule answers to these words."));
  add_wide(view_, 1);
  words_ = new wxTextCtrl{this,
                          wxID_ANY,
                          "",
                          wxDefaultPosition,
                          wxSize(FromDIP(980), 4 * GetCharHeight()),
                          wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*words_, said("The chosen rule"));
  add_wide(words_, 0);
  const auto change = [this] {
    if (!view_->selected().empty()) chosen_ = rules_.at(std::stoul(view_->selected())).rule;
    EndModal(wxID_OK);
  };
  add_action(said("&New rule..."), [this] { EndModal(wxID_OK); });
  add_action(said("C&hange this rule..."), change);
  finish(said("C&lose"), false);
  find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
    table_.find(from_wx(find_->GetValue()));
    view_->table_changed();
  });
  view_->when_selected([this](const std::string& id) {
    if (id.empty()) return words_->Clear();
    const auto& rule = rules_.at(std::stoul(id)).rule;
    words_->ChangeValue(to_wx(say("{}\nKnown from: {}", desk::rule_words(rule), rule.source)));
  });
  view_->when_chosen([change](const std::string&) { change(); });
  view_->table_changed();
  find_->SetFocus();
}

}  // namespace sparewell::desktop
