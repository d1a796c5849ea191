#include "desktop/pages/plan/play_pane.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desk/commands.hpp"
#include "desk/picture/play_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

PlayPane::PlayPane(wxWindow* parent, std::function<void()> play) : wxScrolledWindow{parent} {
  auto* top = make_top(std::move(play));
  headline_ = new WrappedLabel{this};
  headline_->SetFont(headline_->GetFont().Bold());
  by_cost_ = new WrappedLabel{this};
  result_ = make_result();
  grounds_ = new WrappedLabel{this};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, inset);
  sizer->Add(headline_, inset);
  sizer->Add(by_cost_, inset);
  sizer->Add(result_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(grounds_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  // Large text or a small window: the page scrolls as a whole.
  SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*this);
  keep_wrapped(*this, {headline_, by_cost_, grounds_}, FromDIP(20));
  show_play(nullptr);
}

wxSizer* PlayPane::make_top(std::function<void()> play) {
  auto* label = new wxStaticText{this, wxID_ANY, said("&Played:")};
  choices_ = new wxChoice{this, wxID_ANY};
  set_accessible_name(*choices_, said("Played"));
  choices_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
    page_.choose(static_cast<std::size_t>(event.GetSelection()));
    choice_changed();
  });
  const auto& spec = desk::command_spec(desk::Command::play_policy);
  play_ = new wxButton{this, wxID_ANY, to_wx(spec.label)};
  play_->SetToolTip(to_wx(tooltip_words(spec)));
  play_->Bind(wxEVT_BUTTON, [play = std::move(play)](wxCommandEvent&) { play(); });
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(label, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(choices_, wxSizerFlags{}.CentreVertical());
  top->AddStretchSpacer(1);
  top->Add(play_, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* PlayPane::make_result() {
  auto* panel = new wxPanel{this};
  // In the order in which the Tab key goes through them.
  chart_ = new ChartView{panel, say("Money in stock against pieces on hand, drawn")};
  chart_->set_least_height(13);
  runs_ = new TableView{panel, page_.runs(), said("Ways of ordering")};
  runs_->set_least_rows(5);
  chart_->when_selected([this](const std::string& id) { runs_->select(id); });
  runs_->when_selected([this](const std::string& id) { chart_->mark(id); });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(chart_, wxSizerFlags{3}.Expand());
  sizer->Add(runs_, wxSizerFlags{2}.Expand().Border(wxTOP, FromDIP(4)));
  panel->SetSizer(sizer);
  return panel;
}

void PlayPane::show_play(const desk::PolicyPlayPtr& play) {
  page_.show_play(play);
  choices_->Clear();
  for (const auto& choice : page_.choices()) choices_->Append(to_wx(choice));
  if (choices_->GetCount() > 0) choices_->SetSelection(static_cast<int>(page_.chosen()));
  choices_->Enable(page_.played());
  choice_changed();
}

void PlayPane::choice_changed() {
  chart_->show(desk::play_picture(page_.curves(), page_.money_title()));
  runs_->table_changed();
  runs_->select(page_.present_id());
  chart_->mark(page_.present_id());
  result_->Show(page_.played());
  headline_->set_text(page_.headline());
  by_cost_->set_text(page_.by_cost());
  grounds_->set_text(page_.grounds());
  FitInside();
  Layout();
}

void PlayPane::allow_playing(bool allowed) {
  play_->Enable(allowed);
}

void PlayPane::focus_rows() {
  if (page_.played()) runs_->focus_rows();
}

}  // namespace sparewell::desktop
