/// What tests ask of the window besides its controls: which texts are cut, and when it did not
/// answer.
#pragma once

#include <chrono>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include <wx/timer.h>

class wxWindow;

namespace sparewell::desktop {

/// Texts of labels, buttons and column headings within `window` for which there is not enough room,
/// and controls that reach beyond the edge of what they stand in; hidden ones are left out.
[[nodiscard]] std::vector<std::string> cut_texts(const wxWindow& window);

/// Writes a line to the file as soon as it sees something: "cut<TAB>window<TAB>text" once a text,
/// "usable<TAB>window<TAB>milliseconds" once a clinic file is shown, counted from the program's
/// start; "slow<TAB>window<TAB>milliseconds" whenever the window did not answer for longer than
/// `answers_within`. Texts of the lists' rows, and so what is kept about patients, are not written.
class SelfReport : public wxTimer {
 public:
  static constexpr std::chrono::milliseconds answers_within{100};

  explicit SelfReport(const std::string& file);
  void Notify() override;

 private:
  using Clock = std::chrono::steady_clock;
  void look();

  std::ofstream out_;
  std::set<std::string> seen_;  ///< cut when last looked at
  std::set<std::string> told_;
  bool usable_ = false;
  Clock::time_point last_tick_;
  Clock::time_point last_look_;
};

}  // namespace sparewell::desktop
