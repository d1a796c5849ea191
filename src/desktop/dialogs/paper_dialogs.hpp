/// What is asked before papers for patients and for visits are written.
#pragma once

#include <functional>
#include <string>

#include "desk/papers/paper_form.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

/// Language, paper and whether the name stands on it.
class PaperDialog : public Form {
 public:
  PaperDialog(wxWindow* parent, const std::string& title, const std::string& intro);
  [[nodiscard]] desk::PatientPaper how() const;

 private:
  wxChoice* language_ = nullptr;
  wxChoice* paper_ = nullptr;
  wxChoice* name_ = nullptr;
};

/// The day of the visits; says how many are known for it while it is typed.
class VisitDialog : public Form {
 public:
  using Known = std::function<std::string(const std::string& day)>;
  VisitDialog(wxWindow* parent, Date proposed, Known known);
  [[nodiscard]] std::string day() const;
  [[nodiscard]] desk::VisitPaper how() const;

 private:
  void show_known();

  Known known_;
  wxTextCtrl* day_ = nullptr;
  wxChoice* paper_ = nullptr;
  wxChoice* name_ = nullptr;
  wxStaticText* told_ = nullptr;
};

}  // namespace sparewell::desktop
