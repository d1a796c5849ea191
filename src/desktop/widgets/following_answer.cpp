#include "desktop/widgets/following_answer.hpp"

#include <utility>

#include <wx/choice.h>
#include <wx/textctrl.h>

#include "desk/describe_failure.hpp"
#include "desktop/widgets/quiet_worker.hpp"

namespace sparewell::desktop {
namespace {

constexpr int rest_ms = 350;
constexpr int busy_ms = 50;

}  // namespace

FollowingAnswer::FollowingAnswer(std::function<Work()> ask,
                                 std::function<void(const std::string&)> show)
    : ask_{std::move(ask)}, show_{std::move(show)}, worker_{quiet_worker()} {
  pause_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { this->ask(); });
}

void FollowingAnswer::follow(const std::vector<wxWindow*>& fields) {
  for (auto* field : fields) {
    field->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { pause_.StartOnce(rest_ms); });
    field->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { this->ask(); });
  }
}

void FollowingAnswer::ask() {
  if (worker_->busy()) {
    pause_.StartOnce(busy_ms);
    return;
  }
  pause_.Stop();
  const int asked = ++question_;
  auto answer = std::make_shared<std::string>();
  worker_->start({"", false, [work = ask_(), answer](const desk::JobControl&) { *answer = work(); },
                  [this, asked, answer](const desk::JobEnd& end) {
                    if (asked != question_) return;
                    show_(end.failure ? desk::describe_failure(end.failure) : *answer);
                  }});
}

void FollowingAnswer::leave() {
  pause_.Stop();
  ++question_;
}

}  // namespace sparewell::desktop
