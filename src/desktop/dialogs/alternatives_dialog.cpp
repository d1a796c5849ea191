#include "desktop/dialogs/alternatives_dialog.hpp"

#include <fmt/format.h>
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
constexpr int rows = 7;

}  // namespace

AlternativesDialog::AlternativesDialog(wxWindow* parent, const std::string& introduction,
                                       desk::AlternativeParts found)
    : Form{parent, said("Other items"), introduction},
      found_{std::move(found)},
      table_{desk::alternative_columns()} {
  table_.fill(desk::alternative_rows(found_));
  view_ = new TableView{this, table_, said("Other items, the most suitable first")};
  view_->set_least_rows(found_.parts.empty() ? 1 : rows);
  view_->SetMinSize({FromDIP(width), FromDIP(found_.parts.empty() ? 60 : 200)});
  view_->set_empty_words(said("No other item of the catalogue could do this work."));
  add_wide(view_, 2);
  words_ = new wxTextCtrl{this,
                          wxID_ANY,
                          "",
                          wxDefaultPosition,
                          wxSize(FromDIP(width), 7 * GetCharHeight()),
                          wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*words_, said("What is known of the chosen item"));
  add_wide(words_, 1);
  const auto out = desk::left_out_words(found_.left_out);
  auto* below = new wxStaticText{
      this, wxID_ANY,
      to_wx(out.empty() ? desk::care_caution() : fmt::format("{}\n{}", out, desk::care_caution()))};
  below->Wrap(FromDIP(width));
  add_wide(below, 0);
  finish(said("C&lose"), false);
  view_->when_selected([this](const std::string& id) { show_words(id); });
  view_->table_changed();
  if (found_.parts.empty()) {
    words_->Hide();
    Fit();
    FindWindow(wxID_CANCEL)->SetFocus();
  } else {
    view_->select(found_.parts.front().item.code.text);
    view_->focus_rows();
  }
}

void AlternativesDialog::show_words(const std::string& id) {
  for (const auto& part : found_.parts) {
    if (part.item.code.text != id) continue;
    words_->ChangeValue(to_wx(part.words));
  }
}

}  // namespace sparewell::desktop
