#include "desktop/widgets/work_bar.hpp"

#include <algorithm>

#include <wx/button.h>
#include <wx/gauge.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

constexpr int gauge_steps = 1000;

}  // namespace

WorkBar::WorkBar(wxWindow* parent, std::function<void()> stop)
    : wxStatusBar{parent, wxID_ANY, wxSTB_SIZEGRIP | wxSTB_ELLIPSIZE_END}, stop_{std::move(stop)} {
  gauge_ = new wxGauge{this, wxID_ANY, gauge_steps, wxDefaultPosition,
                       wxSize{FromDIP(140), FromDIP(12)}};
  set_accessible_name(*gauge_, said("Part done"));
  stop_button_ =
      new wxButton{this, wxID_ANY, said("S&top"), wxDefaultPosition, wxDefaultSize, wxBU_EXACTFIT};
  stop_button_->SetToolTip(said("Stop the work that is going on"));
  measure_again();
  gauge_->Hide();
  stop_button_->Hide();
  stop_button_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    stop_button_->Disable();
    stop_();
  });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    place();
  });
  pulse_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { gauge_->Pulse(); });
}

void WorkBar::measure_again() {
  const auto button = stop_button_->GetBestSize();
  const int widths[] = {-1, button.x + FromDIP(160)};
  SetFieldsCount(2, widths);
  const int height = std::max(button.y, GetCharHeight()) + FromDIP(4);
  SetMinHeight(height);
  SetMinSize({-1, height});
}

void WorkBar::working(const desk::JobProgress& progress, bool can_stop) {
  SetStatusText(to_wx(desk::progress_words(progress)), 0);
  gauge_->Show();
  if (progress.done) {
    pulse_.Stop();
    gauge_->SetValue(static_cast<int>(*progress.done * gauge_steps));
  } else if (!pulse_.IsRunning()) {
    pulse_.Start(150);
  }
  if (stop_button_->IsShown() != can_stop) {
    stop_button_->Show(can_stop);
    stop_button_->Enable(can_stop);
  }
  place();
}

void WorkBar::idle(const std::string& text) {
  pulse_.Stop();
  gauge_->Hide();
  stop_button_->Hide();
  SetStatusText(to_wx(text), 0);
}

void WorkBar::place() {
  wxRect field;
  if (!GetFieldRect(1, field)) return;
  const auto button = stop_button_->GetBestSize();
  stop_button_->SetSize(field.GetRight() - button.x, field.y + (field.height - button.y) / 2,
                        button.x, button.y);
  const int height = gauge_->GetBestSize().y;
  gauge_->SetSize(field.x, field.y + (field.height - height) / 2, FromDIP(140), height);
}

}  // namespace sparewell::desktop
