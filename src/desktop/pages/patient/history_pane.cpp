#include "desktop/pages/patient/history_pane.hpp"

#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/table_view.hpp"

namespace sparewell::desktop {

HistoryPane::HistoryPane(wxWindow* parent, const PaneActions& /*actions*/)
    : PatientPane{parent}, table_{desk::history_columns()} {
  auto* find = new FindBox{this, say("Item, lot, claim, reason, substance ..."),
                           say("Find in the history"), [this](const std::string& typed) {
                             table_.find(typed);
                             show_rows();
                           }};
  kind_ = new wxChoice{this, wxID_ANY};
  for (const auto& kind : desk::history_kinds()) kind_->Append(to_wx(kind));
  kind_->SetSelection(0);
  set_accessible_name(*kind_, said("Kind of entry"));
  kind_->SetToolTip(to_wx(said("Show one kind of entry alone")));
  kind_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
    table_.require(desk::history_marks(static_cast<std::size_t>(event.GetSelection())));
    show_rows();
  });
  count_ = new wxStaticText{this, wxID_ANY, ""};
  view_ = new TableView{this, table_, said("History"), Pick::none};
  view_->set_empty_words(said("No such entry is on record."));
  find->goes_down_to(*view_);
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  row->Add(find, wxSizerFlags{1}.CentreVertical());
  row->Add(kind_, wxSizerFlags{}.CentreVertical().Border(wxLEFT, FromDIP(8)));
  row->Add(count_, wxSizerFlags{}.CentreVertical().Border(wxLEFT, FromDIP(8)));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(row, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
}

void HistoryPane::fill(const ChosenPatient& chosen) {
  history_ = desk::patient_history(*chosen.day, chosen.patient);
  table_.fill(desk::history_rows(history_));
  show_rows();
}

void HistoryPane::show_rows() {
  view_->table_changed();
  count_->SetLabelText(to_wx(desk::history_count(table_)));
  Layout();
}

}  // namespace sparewell::desktop
