#include "desktop/dialogs/findings_dialog.hpp"

#include <wx/button.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {
namespace {

constexpr int width = 980;
constexpr int rows = 12;

}  // namespace

FindingsDialog::FindingsDialog(wxWindow* parent, const desk::Day& day,
                               std::vector<desk::PatientFinding> findings)
    : Form{parent, said("Findings of everyone"), desk::findings_summary(findings)},
      findings_{std::move(findings)},
      table_{desk::finding_columns(desk::FindingsOf::everyone)} {
  table_.fill(desk::finding_rows(day, findings_, desk::FindingsOf::everyone));
  find_ = add_text(said("&Find"), "", said("Any words of the patient, the part or what was found"));
  view_ = new TableView{this, table_, said("Findings of everyone")};
  view_->set_least_rows(rows);
  view_->SetMinSize({FromDIP(width), FromDIP(320)});
  view_->set_empty_words(said("No finding answers to these words."));
  add_wide(view_, 1);
  words_ = new wxTextCtrl{this,
                          wxID_ANY,
                          "",
                          wxDefaultPosition,
                          wxSize(FromDIP(width), 4 * GetCharHeight()),
                          wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*words_, said("The chosen finding"));
  add_wide(words_, 0);
  auto* go = new wxButton{this, wxID_ANY, said("Show &patient")};
  go->SetToolTip(said("Go to the patient of the chosen finding (Enter in the list)"));
  go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { choose(view_->selected()); });
  add_wide(go, 0);
  auto* caution = new wxStaticText{this, wxID_ANY, to_wx(desk::care_caution())};
  caution->Wrap(FromDIP(width));
  add_wide(caution, 0);
  finish(said("C&lose"), false);
  find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
    table_.find(from_wx(find_->GetValue()));
    view_->table_changed();
  });
  view_->when_selected([this](const std::string& id) { show_words(id); });
  view_->when_chosen([this](const std::string& id) { choose(id); });
  view_->table_changed();
  find_->SetFocus();
}

void FindingsDialog::show_words(const std::string& id) {
  words_->ChangeValue(id.empty() ? wxString{} : to_wx(findings_.at(std::stoul(id)).finding.words));
}

void FindingsDialog::choose(const std::string& id) {
  if (id.empty()) return;
  chosen_ = findings_.at(std::stoul(id)).patient;
  EndModal(wxID_OK);
}

}  // namespace sparewell::desktop
