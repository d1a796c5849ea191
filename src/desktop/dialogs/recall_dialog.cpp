#include "desktop/dialogs/recall_dialog.hpp"

#include <fmt/format.h>
#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/msgdlg.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desk/recall_rows.hpp"
#include "desktop/dialogs/save_workbook.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

RecallDialog::RecallDialog(wxWindow* parent, desk::ClinicFile file, const std::vector<Item>& items)
    : Form{parent, said("Recall"), desk::recall_caution()},
      file_{std::move(file)},
      items_{desk::item_table(items)},
      touched_{desk::recall_table()} {
  find_ = add_text(said("&Find item"), "",
                   said("Any words of its code, description, part number or GTIN"));
  lot_ = add_text(said("&Lot"), "", said("The recalled lot; empty for every lot of the item"));
  item_list_ = new TableView{this, items_, said("Items")};
  item_list_->set_least_rows(4);
  item_list_->SetMinSize({FromDIP(880), FromDIP(130)});
  item_list_->set_empty_words(said("No item of the catalogue answers to these words."));
  add_wide(item_list_, 1);
  item_list_->table_changed();
  make_buttons();
  summary_ = new wxStaticText{this, wxID_ANY, " "};
  add_wide(summary_, 0);
  list_ = new TableView{this, touched_, said("Everyone and everything that the recall touches"),
                        Pick::none};
  list_->set_least_rows(6);
  list_->SetMinSize({FromDIP(880), FromDIP(200)});
  list_->set_empty_words(said("Choose the item, enter the lot, and look it up."));
  add_wide(list_, 2);
  list_->table_changed();
  finish(said("&Close"), false);
  look_up_->SetDefault();
  find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) {
    items_.find(from_wx(find_->GetValue()));
    item_list_->table_changed();
  });
  item_list_->when_chosen([this](const std::string&) { look_up(); });
  find_->SetFocus();
}

void RecallDialog::make_buttons() {
  auto* panel = new wxPanel{this};
  look_up_ = new wxButton{panel, wxID_ANY, said("Look &up")};
  quarantine_ = new wxButton{panel, wxID_ANY, said("&Quarantine the stock")};
  write_ = new wxButton{panel, wxID_ANY, said("&Write list...")};
  names_ = new wxCheckBox{panel, wxID_ANY, said("With patients' &names")};
  names_->SetToolTip(said("Leave it off for a list that leaves the clinic"));
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  for (wxWindow* control : {static_cast<wxWindow*>(look_up_), static_cast<wxWindow*>(quarantine_),
                            static_cast<wxWindow*>(write_), static_cast<wxWindow*>(names_)}) {
    row->Add(control, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  }
  panel->SetSizer(row);
  add_wide(panel, 0);
  quarantine_->Disable();
  write_->Disable();
  look_up_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { look_up(); });
  quarantine_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { quarantine(); });
  write_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { write(); });
  names_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { show(); });
}

desk::Names RecallDialog::names() const {
  return names_->GetValue() ? desk::Names::shown : desk::Names::left_out;
}

void RecallDialog::look_up() {
  auto found =
      aside([&file = file_, item = ItemCode{item_list_->selected()},
             lot = from_wx(lot_->GetValue())] { return desk::look_up_recall(file, item, lot); });
  if (!found) {
    wxMessageBox(to_wx(found.error().sentence), said("Recall"), wxOK | wxICON_WARNING, this);
    find_->SetFocus();
    return;
  }
  notice_ = std::move(*found);
  show();
}

void RecallDialog::show() {
  if (!notice_) return;
  const auto& found = notice_->found;
  summary_->SetLabelText(to_wx(
      fmt::format("{}, {}: {}", found.item.text,
                  found.lot.empty() ? std::string{said("all lots")} : say("lot {}", found.lot),
                  desk::recall_summary(found))));
  summary_->Wrap(GetClientSize().x - FromDIP(24));
  touched_.fill(desk::recall_rows(*notice_, names()));
  list_->set_empty_words(said("Nothing is recorded of it. Look on the shelves."));
  list_->table_changed();
  quarantine_->Enable(!supply::transfers_to_quarantine(found, "looked at").empty());
  write_->Enable();
  Layout();
}

void RecallDialog::quarantine() {
  const auto moved = aside([&file = file_, &found = notice_->found] {
    return desk::quarantine(file, found.item, found.lot);
  });
  moved_ = moved_ || !moved.empty();
  const auto lines = desk::quarantine_lines(moved);
  look_up();
  wxMessageBox(to_wx(fmt::format("{}", fmt::join(lines, "\n"))), said("Recall"), wxOK, this);
}

void RecallDialog::write() {
  const auto file =
      ask_for_workbook(this, said("Write recall list"), say("recall {}", notice_->found.item.text));
  if (file.empty()) return;
  try {
    do_aside(
        [this, &file, shown = names()] { desk::write_recall_list(file_, *notice_, shown, file); });
  } catch (...) {
    wxMessageBox(to_wx(desk::describe_failure(std::current_exception())), said("Recall"),
                 wxOK | wxICON_ERROR, this);
  }
}

}  // namespace sparewell::desktop
