#include "desktop/pages/shelf/moves_pane.hpp"

#include <wx/button.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/restock_words.hpp"
#include "desk/wording.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

MovesPane::MovesPane(wxWindow* parent, std::function<void(desk::Command)> run,
                     std::function<void()> choice_changed)
    : wxPanel{parent}, choice_changed_{std::move(choice_changed)}, moves_{desk::move_columns()} {
  summary_ = new WrappedLabel{this};
  view_ = new TableView{this, moves_, said("Moves between branches")};
  view_->when_selected([this](const std::string&) { show_why(); });
  view_->when_chosen([run](const std::string&) { run(desk::Command::send_moves); });
  title_ = new WrappedLabel{this};
  title_->SetFont(title_->GetFont().Bold());
  why_ = new WrappedLabel{this};
  const auto& spec = desk::command_spec(desk::Command::send_moves);
  send_ = new wxButton{this, wxID_ANY, said("Sen&d...")};
  send_->SetToolTip(to_wx(tooltip_words(spec)));
  send_->Bind(wxEVT_BUTTON, [run](wxCommandEvent&) { run(desk::Command::send_moves); });
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(summary_, inset);
  sizer->Add(view_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(title_, inset);
  sizer->Add(why_, inset);
  sizer->Add(send_, wxSizerFlags{}.Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {summary_, title_, why_}, FromDIP(20));
}

void MovesPane::show(const desk::DayPtr& day) {
  day_ = day;
  const auto& plan = day->restock();
  summary_->set_text(plan.moves.empty() ? std::string{} : desk::summary_words(plan));
  view_->set_empty_words(desk::nothing_to_move_words(plan));
  moves_.fill(desk::move_rows(*day));
  view_->table_changed();
}

void MovesPane::find(const std::string& typed) {
  moves_.find(typed);
  if (day_ && moves_.total() > 0)
    view_->set_empty_words(said("No move answers to what you typed."));
  view_->table_changed();
}

void MovesPane::goes_down_from(FindBox& box) {
  box.goes_down_to(*view_);
}

const supply::RestockMove* MovesPane::chosen() const {
  return day_ ? desk::find_move(*day_, view_->selected()) : nullptr;
}

void MovesPane::show_why() {
  const auto* move = chosen();
  title_->set_text(move == nullptr ? std::string{} : desk::move_words(*move));
  why_->set_text(move == nullptr ? std::string{} : desk::why(*move, day_->restock()));
  Layout();
  choice_changed_();
}

void MovesPane::allow_sending(bool allowed) {
  send_->Enable(allowed);
}

void MovesPane::focus_rows() {
  view_->focus_rows();
}

}  // namespace sparewell::desktop
