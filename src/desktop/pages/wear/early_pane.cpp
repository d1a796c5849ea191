#include "desktop/pages/wear/early_pane.hpp"

#include <algorithm>

#include <wx/button.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/surprise_words.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

EarlyPane::EarlyPane(wxWindow* parent, desk::WearPage& page, std::function<void(std::size_t)> go_to)
    : wxPanel{parent}, page_{page}, go_to_{std::move(go_to)} {
  // In the order in which the Tab key goes through them.
  auto* flagged = make_flagged();
  auto* row = make_row();
  count_ = new WrappedLabel{this};
  parts_ = new TableView{this, page_.early(), said("Parts that wore out far too early")};
  parts_->when_selected([this](const std::string& id) { show_patient_->Enable(!id.empty()); });
  parts_->when_chosen([this](const std::string& id) { show_patient(id); });
  find_->goes_down_to(*parts_);
  auto* caution = new WrappedLabel{this, desk::surprises_caution()};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(flagged, wxSizerFlags{}.Expand());
  sizer->Add(count_, inset);
  sizer->Add(row, inset);
  sizer->Add(parts_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(caution, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {summary_, flag_, count_, caution}, FromDIP(20));
}

wxSizer* EarlyPane::make_flagged() {
  summary_ = new WrappedLabel{this};
  summary_->SetFont(summary_->GetFont().Bold());
  flagged_ = new TableView{this, page_.flagged(), said("Flagged lots and items")};
  flag_ = new WrappedLabel{this};
  flagged_->when_selected([this](const std::string& id) {
    flag_->set_text(page_.flag_words(id));
    Layout();
  });
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(summary_, inset);
  sizer->Add(flagged_, inset);
  sizer->Add(flag_, inset);
  return sizer;
}

wxSizer* EarlyPane::make_row() {
  find_ = new FindBox{this, said("Patient, item, serial, lot or flag"),
                      said("Find an early ending"), [this](const std::string& typed) {
                        page_.early().find(typed);
                        parts_changed();
                      }};
  show_patient_ = new wxButton{this, wxID_ANY, said("Show &patient")};
  show_patient_->SetToolTip(said("Go to the patient of the chosen part (Enter in the list)"));
  show_patient_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { show_patient(parts_->selected()); });
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  row->Add(show_patient_, wxSizerFlags{}.CentreVertical());
  return row;
}

void EarlyPane::day_changed() {
  summary_->set_text(page_.early_summary());
  const auto flags = static_cast<int>(page_.flagged().size());
  flagged_->Show(flags > 0);
  flagged_->set_least_rows(std::clamp(flags, 1, 4));
  flagged_->table_changed();
  parts_changed();
}

void EarlyPane::kind_changed() {
  parts_changed();
}

void EarlyPane::parts_changed() {
  count_->set_text(page_.early_count());
  parts_->set_empty_words(page_.early_empty_words());
  parts_->table_changed();
  Layout();
}

void EarlyPane::show_patient(const std::string& id) {
  if (const auto unit = page_.unit_of(id)) go_to_(*unit);
}

void EarlyPane::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
