/// A note above the pages that stays until it is put away: what was written, and what can be done
/// next.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/panel.h>

namespace sparewell::desktop {

class WrappedLabel;

class NoteBar : public wxPanel {
 public:
  struct Action {
    std::string label;  ///< with its mnemonic
    std::function<void()> call;
  };

  explicit NoteBar(wxWindow* parent);
  void say(const std::string& text, const std::vector<Action>& actions);
  void put_away();

 private:
  WrappedLabel* text_ = nullptr;
  wxSizer* buttons_ = nullptr;
};

}  // namespace sparewell::desktop
