#include "desktop/dialogs/paper_dialogs.hpp"

#include <wx/choice.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

std::vector<std::string> papers() {
  return {"A4", said("US Letter")};
}

}  // namespace

PaperDialog::PaperDialog(wxWindow* parent, const std::string& title, const std::string& intro)
    : Form{parent, title, intro} {
  language_ = add_choice(said("&Language"), desk::language_choices(), 0,
                         said("Of the paper; with several languages each has pages of its own"));
  paper_ = add_choice(said("Pa&per"), papers(), 0, said("What it is printed on"));
  name_ = add_choice(said("&Name"), {said("with the patient's name"), said("the reference alone")},
                     0, said("Whether the name stands beside the reference"));
  finish(said("&Write..."));
}

desk::PatientPaper PaperDialog::how() const {
  return desk::read_paper(
      {language_->GetSelection(), paper_->GetSelection(), name_->GetSelection()});
}

VisitDialog::VisitDialog(wxWindow* parent, Date proposed, Known known)
    : Form{parent, said("Visit sheets"),
           said("A list of the visits of a day, and a page for each patient: parts near their end, "
                "findings, and what to have ready on the bench.")},
      known_{std::move(known)} {
  day_ =
      add_text(said("&Day"), iso_text(proposed), said("The day of the visits, such as 2026-11-26"));
  paper_ = add_choice(said("Pa&per"), papers(), 0, said("What it is printed on"));
  name_ = add_choice(said("&Names"), {said("with the patients' names"), said("references alone")},
                     0, said("Whether names stand beside the references"));
  told_ = new wxStaticText{this, wxID_ANY, ""};
  add_wide(told_, 0);
  show_known();
  finish(said("&Write..."));
  day_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { show_known(); });
  day_->SetFocus();
}

std::string VisitDialog::day() const {
  return from_wx(day_->GetValue().Strip(wxString::both));
}

desk::VisitPaper VisitDialog::how() const {
  const auto how = desk::read_paper({0, paper_->GetSelection(), name_->GetSelection()});
  return {how.paper, how.names};
}

void VisitDialog::show_known() {
  told_->SetLabel(to_wx(known_(day())));
}

}  // namespace sparewell::desktop
