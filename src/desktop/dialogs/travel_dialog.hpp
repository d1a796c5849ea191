/// Whether a patient's parts last on a trip, and what to pack.
#pragma once

#include <functional>
#include <string>

#include "desk/travel_form.hpp"
#include "desktop/dialogs/form.hpp"
#include "desktop/widgets/following_answer.hpp"

namespace sparewell::desktop {

/// The answer follows the fields as they are filled in; nothing is recorded but spares that are
/// lent. ShowModal gives wxID_OK when they were.
class TravelDialog : public Form {
 public:
  /// Called in another thread too.
  using Answer = std::function<std::string(const desk::TravelAnswers&)>;
  /// Writes the card; gives the sentence to say, or "" when the person thought better of it.
  using WriteCard = std::function<std::string(wxWindow*, const desk::TravelAnswers&)>;
  /// What the window does when spares are to be lent.
  struct Lending {
    /// What would be lent, as a question, or why nothing can be.
    std::function<Expected<std::string>(const desk::TravelAnswers&)> question;
    /// The refusal, or "" when they are lent: then the dialog closes.
    std::function<std::string(const desk::TravelAnswers&)> lend;
  };
  TravelDialog(wxWindow* parent, const std::string& introduction, Answer answer, WriteCard card,
               Lending lending);

 private:
  void make_fields();
  [[nodiscard]] desk::TravelAnswers answers() const;
  void show_answer();
  void write_card();
  void lend();

  Answer answer_;
  WriteCard card_;
  Lending lending_;
  wxTextCtrl* departure_ = nullptr;
  wxTextCtrl* back_ = nullptr;
  wxTextCtrl* delay_ = nullptr;
  wxChoice* wanted_ = nullptr;
  wxChoice* activity_ = nullptr;
  wxTextCtrl* kneeling_ = nullptr;
  wxTextCtrl* wear_hours_ = nullptr;
  wxChoice* sweating_ = nullptr;
  wxChoice* sport_ = nullptr;
  wxTextCtrl* resupply_ = nullptr;
  wxTextCtrl* with_ = nullptr;
  wxTextCtrl* told_ = nullptr;
  FollowingAnswer following_;
};

}  // namespace sparewell::desktop
