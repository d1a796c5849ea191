#include "desktop/pages/wear/test_pane.hpp"

#include <wx/sizer.h>

#include "desktop/text.hpp"
#include "desktop/widgets/score_chart.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

TestPane::TestPane(wxWindow* parent, desk::WearPage& page,
                   std::function<void(std::optional<Kind>)> chosen)
    : wxPanel{parent}, page_{page}, chosen_call_{std::move(chosen)} {
  headline_ = new WrappedLabel{this};
  headline_->SetFont(headline_->GetFont().Bold());
  errors_ = new WrappedLabel{this};
  grounds_ = new WrappedLabel{this};
  split_ = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* drawing = make_drawing(split_);
  scores_ = new TableView{split_, page_.scores(), "Test of the forecasts"};
  scores_->when_selected([this](const std::string& id) {
    if (!id.empty()) chosen_call_(desk::kind_of_id(id));
  });
  split_->SplitHorizontally(drawing, scores_);
  share_room(*split_, 0.58);
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(headline_, inset);
  sizer->Add(errors_, inset);
  sizer->Add(grounds_, inset);
  sizer->Add(split_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {headline_, errors_, grounds_}, FromDIP(20));
  test_changed();
}

wxWindow* TestPane::make_drawing(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  chart_ = new ScoreChart{panel};
  chart_->when_selected([this](const std::string& id) { chosen_call_(desk::kind_of_id(id)); });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(chart_, wxSizerFlags{1}.Expand());
  sizer->Add(new ScoreLegend{panel}, wxSizerFlags{}.Expand());
  panel->SetSizer(sizer);
  return panel;
}

void TestPane::test_changed() {
  const auto chosen = page_.chosen();
  chart_->show(page_.drawn());
  split_->Show(page_.tested());
  // A list without a size scrolls to the wrong place.
  Layout();
  scores_->table_changed();
  // The list may have chosen its first row.
  scores_->select(desk::kind_id(chosen));
  kind_changed();
}

void TestPane::kind_changed() {
  const auto id = desk::kind_id(page_.chosen());
  scores_->select(id);
  chart_->mark(id);
  headline_->set_text(page_.headline());
  errors_->set_text(page_.errors());
  grounds_->set_text(page_.grounds());
  Layout();
}

}  // namespace sparewell::desktop
