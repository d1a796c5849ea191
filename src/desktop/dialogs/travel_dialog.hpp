/// Whether a patient's parts last on a trip, and what to pack.
#pragma once

#include <functional>
#include <string>

#include <wx/timer.h>

#include "desk/travel_form.hpp"
#include "desktop/dialogs/form.hpp"

namespace sparewell::desktop {

/// The answer follows the fields as they are filled in; nothing is recorded.
class TravelDialog : public Form {
 public:
  using Answer = std::function<std::string(const desk::TravelAnswers&)>;
  /// Writes the card; gives the sentence to say, or "" when the person thought better of it.
  using WriteCard = std::function<std::string(wxWindow*, const desk::TravelAnswers&)>;
  TravelDialog(wxWindow* parent, const std::string& introduction, Answer answer, WriteCard card);

 private:
  void make_fields();
  [[nodiscard]] desk::TravelAnswers answers() const;
  void show_answer();
  void write_card();

  Answer answer_;
  WriteCard card_;
  wxTextCtrl* departure_ = nullptr;
  wxTextCtrl* back_ = nullptr;
  wxTextCtrl* delay_ = nullptr;
  wxChoice* wanted_ = nullptr;
  wxChoice* activity_ = nullptr;
  wxTextCtrl* kneeling_ = nullptr;
  wxTextCtrl* wear_hours_ = nullptr;
  wxChoice* sweating_ = nullptr;
  wxChoice* sport_ = nullptr;
  wxTextCtrl* told_ = nullptr;
  wxTimer pause_;  ///< the answer follows when typing rests
};

}  // namespace sparewell::desktop
