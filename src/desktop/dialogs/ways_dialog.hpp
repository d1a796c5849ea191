/// The language of the program, and how it writes dates, amounts and lengths.
#pragma once

#include "desk/ways.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

class WaysDialog : public Form {
 public:
  WaysDialog(wxWindow* parent, const desk::Ways& ways);
  /// What is chosen.
  [[nodiscard]] desk::Ways ways() const;

 private:
  void show_countries(const std::string& chosen);

  std::vector<desk::WaysChoice> languages_;
  std::vector<desk::WaysChoice> countries_;
  wxChoice* language_ = nullptr;
  wxChoice* country_ = nullptr;
  wxChoice* length_ = nullptr;
};

}  // namespace sparewell::desktop
