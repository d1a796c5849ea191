#include "desktop/dialogs/receive_dialog.hpp"

#include <fmt/format.h>
#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/panel.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/receiving_words.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/scan_field.hpp"

namespace sparewell::desktop {

ReceiveDialog::ReceiveDialog(wxWindow* parent, desk::ReceiveForm form,
                             const std::vector<Item>& catalogue, Date today,
                             const std::filesystem::path& clinic_file, Book book)
    : AskingForm{parent, said("Receive a delivery"),
                 said("Scan the label or fill the fields in, then book.")},
      catalogue_{catalogue},
      today_{today},
      supplier_{form.supplier} {
  make_fields(form);
  keep_draft({order_, item_, lot_, use_by_, serials_, quantity_, damaged_, damage_,
              damaged_serials_, place_, not_replaced_, extra_, undated_, known_serial_},
             clinic_file, fmt::format("delivery from {} of {}", form.supplier, form.order_ref));
  finish_asking(
      said("&Book"), [this, book = std::move(book)] { return this->book(book); }, 720);
  if (auto* close = FindWindow(wxID_CANCEL)) close->SetLabel(said("Cl&ose"));
  scan_->SetFocus();
}

void ReceiveDialog::make_fields(const desk::ReceiveForm& form) {
  scan_ = add_text(said("&Scan"), "",
                   said("GS1 or HIBC text as scanned or typed; Enter takes it over"));
  scan_->SetWindowStyleFlag(scan_->GetWindowStyleFlag() | wxTE_PROCESS_ENTER);
  keep_separators(*scan_);
  scan_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { scan(); });
  order_ = add_text(said("O&rder"), "", said("Its number; empty to find it by the item"));
  item_ = add_text(said("&Item"), "", said("The item's code"));
  lot_ = add_text(said("&Lot"), "", said("As on the label"));
  use_by_ = add_text(said("&Use by"), "", said("Day such as 2028-06-30, as on the label"));
  serials_ =
      add_text(said("Serial &numbers"), "", said("Of the sound pieces, separated by commas"));
  quantity_ = add_text(said("&Pieces"), "", said("How many came, damaged ones included"));
  damaged_ =
      add_text(said("&Damaged"), "", said("How many of them are damaged; they go into quarantine"));
  damage_ = add_text(said("&What is damaged"), "", said("What is wrong with the damaged pieces"));
  damaged_serials_ = add_text(said("Numbers of d&amaged"), "",
                              said("Serial numbers of the damaged pieces, separated by commas"));
  place_ = add_text(said("Put &to"), "", said("Where the sound pieces are put"));
  make_checks();
  fill(form);
}

void ReceiveDialog::make_checks() {
  // Close together, so that the dialog and what it says fit on a small screen.
  auto* panel = new wxPanel{this};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  const auto add = [&](const std::string& label, const std::string& help) {
    auto* box = new wxCheckBox{panel, wxID_ANY, to_wx(label)};
    box->SetToolTip(to_wx(help));
    sizer->Add(box);
    return box;
  };
  not_replaced_ = add(said("The supplier does not r&eplace the damaged pieces"),
                      said("Otherwise they are still to come"));
  extra_ = add(said("Take &more than was ordered"), said("Only after counting again"));
  undated_ =
      add(said("The label &gives no use-by date"), said("Although the item has a shelf life"));
  known_serial_ = add(said("A serial number is &known: the same piece has come again"),
                      said("Only after comparing the label"));
  panel->SetSizer(sizer);
  add_wide(panel, 0);
}

desk::ReceiveForm ReceiveDialog::form() const {
  const auto text = [](const wxTextCtrl* field) { return from_wx(field->GetValue()); };
  desk::ReceiveForm made;
  made.order_ref = text(order_);
  made.supplier = supplier_;
  made.item = text(item_);
  made.lot = text(lot_);
  made.use_by = text(use_by_);
  made.serials = text(serials_);
  made.quantity = text(quantity_);
  made.damaged = text(damaged_);
  made.damage = text(damage_);
  made.damaged_serials = text(damaged_serials_);
  made.place = text(place_);
  made.not_replaced = not_replaced_->GetValue();
  made.accept_extra = extra_->GetValue();
  made.without_use_by = undated_->GetValue();
  made.accept_serial = known_serial_->GetValue();
  return made;
}

void ReceiveDialog::fill(const desk::ReceiveForm& form) {
  order_->ChangeValue(to_wx(form.order_ref));
  item_->ChangeValue(to_wx(form.item));
  lot_->ChangeValue(to_wx(form.lot));
  use_by_->ChangeValue(to_wx(form.use_by));
  serials_->ChangeValue(to_wx(form.serials));
  quantity_->ChangeValue(to_wx(form.quantity));
  damaged_->ChangeValue(to_wx(form.damaged));
  damage_->ChangeValue(to_wx(form.damage));
  damaged_serials_->ChangeValue(to_wx(form.damaged_serials));
  place_->ChangeValue(to_wx(form.place));
  not_replaced_->SetValue(form.not_replaced);
  extra_->SetValue(form.accept_extra);
  undated_->SetValue(form.without_use_by);
  known_serial_->SetValue(form.accept_serial);
}

void ReceiveDialog::scan() {
  const auto scanned = desk::with_scan(form(), scanned_text(*scan_), catalogue_, today_);
  if (!scanned) {
    tell(scanned.error().sentence);
    scan_->SelectAll();
    return;
  }
  fill(scanned->form);
  tell(scanned->doubt);
  scan_->Clear();
}

std::string ReceiveDialog::book(const Book& book) {
  const auto request = desk::read_receive_form(form());
  if (!request) return request.error().sentence;
  const auto outcome = book(*request);
  if (!outcome) return outcome.error().sentence;
  std::string told;
  if (outcome->is_recorded()) {
    for (const auto& line : desk::receipt_lines(*outcome)) {
      booked_.push_back(line);
      told += fmt::format("{}{}", told.empty() ? "" : "\n", line);
    }
    fill(desk::next_form(form()));
    begin_draft_again();
    scan_->SetFocus();
  }
  for (const auto& sentence : desk::finding_sentences(*outcome)) {
    told += fmt::format("{}{}", told.empty() ? "" : "\n", sentence);
  }
  return told;
}

}  // namespace sparewell::desktop
