/// Parts booked for a patient's visit.
#pragma once

#include <string>

#include "desk/booking_form.hpp"
#include "desktop/dialogs/asking_form.hpp"
#include "desktop/widgets/following_answer.hpp"

namespace sparewell::desktop {

/// The checks are shown while the fields are filled in; what stops it needs a clinician's name and
/// reason.
class BookingDialog : public AskingForm {
 public:
  /// `patient` is the reference.
  BookingDialog(wxWindow* parent, const desk::BookingForm& form, std::string patient,
                desk::ClinicFile file);

  /// What was booked, in words; of use after wxID_OK.
  [[nodiscard]] const std::string& news() const { return news_; }

 private:
  void make_fields(const desk::BookingForm& form);
  [[nodiscard]] desk::BookingAnswers answers() const;
  std::string attempt();

  std::string patient_;
  desk::ClinicFile file_;
  std::string news_;
  wxComboBox* item_ = nullptr;
  wxChoice* side_ = nullptr;
  wxTextCtrl* pieces_ = nullptr;
  wxTextCtrl* day_ = nullptr;
  wxChoice* place_ = nullptr;
  wxTextCtrl* by_ = nullptr;
  wxTextCtrl* because_ = nullptr;
  wxTextCtrl* checks_ = nullptr;
  FollowingAnswer following_;
};

}  // namespace sparewell::desktop
