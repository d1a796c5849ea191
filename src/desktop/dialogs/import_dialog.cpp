#include "desktop/dialogs/import_dialog.hpp"

#include <array>

#include <wx/choice.h>
#include <wx/filepicker.h>
#include <wx/msgdlg.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<char, 3> separators{',', ';', '\t'};
constexpr std::array<char, 2> decimal_signs{'.', ','};

}  // namespace

ImportDialog::ImportDialog(wxWindow* parent, const std::string& folder)
    : Form{parent, said("Import a folder"),
           said("Brings the CSV files of a folder into the clinic file: catalogue.csv, "
                "patients.csv, issued.csv and so on. Rows that cannot be taken are listed and kept "
                "aside; importing the same folder again changes nothing.")} {
  folder_ = add_folder(said("&Folder"), folder, said("The folder that holds the CSV files"));
  separator_ = add_choice(said("&Separator"), {said("comma  ,"), said("semicolon  ;"), said("tab")},
                          0, said("What stands between the columns of a row"));
  decimal_ = add_choice(said("&Decimal sign"), {said("point  ."), said("comma  ,")}, 0,
                        said("What stands before the decimals of a number"));
  dates_ = add_text(said("Da&te pattern"), "YYYY-MM-DD",
                    said("How dates are written, for example YYYY-MM-DD, DD.MM.YYYY or M/D/YYYY"));
  add_action(said("D&ry run"), [this] {
    if (read_format()) EndModal(try_first);
  })->SetToolTip(to_wx(say("Shows what would be read, what refused and why; imports nothing")));
  finish(said("&Import"));
  Bind(wxEVT_BUTTON, &ImportDialog::on_ok, this, wxID_OK);
}

std::string ImportDialog::folder() const {
  return from_wx(folder_->GetPath());
}

void ImportDialog::on_ok(wxCommandEvent& event) {
  if (read_format()) event.Skip();
}

bool ImportDialog::read_format() {
  const auto pattern = DatePattern::from_text(from_wx(dates_->GetValue()));
  if (!pattern) {
    wxMessageBox(to_wx(pattern.error().sentence), said("Date pattern"), wxOK | wxICON_WARNING,
                 this);
    dates_->SetFocus();
    return false;
  }
  if (folder_->GetPath().empty()) {
    wxMessageBox(said("Choose the folder that holds the CSV files."), said("Folder"),
                 wxOK | wxICON_WARNING, this);
    folder_->SetFocus();
    return false;
  }
  format_.separator = separators.at(static_cast<std::size_t>(separator_->GetSelection()));
  format_.decimal_sign = decimal_signs.at(static_cast<std::size_t>(decimal_->GetSelection()));
  format_.dates = *pattern;
  return true;
}

}  // namespace sparewell::desktop
