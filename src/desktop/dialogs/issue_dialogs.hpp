/// Handing a part to a patient, and recording that one has ended.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "desk/issuing.hpp"
#include "desk/unit_ending.hpp"
#include "desktop/dialogs/asking_form.hpp"
#include "desktop/widgets/following_answer.hpp"

class wxCheckBox;

namespace sparewell::desktop {

/// The checks are shown while the fields are filled in; what stops it needs a clinician's name and
/// reason.
class IssueDialog : public AskingForm {
 public:
  /// Called in another thread, while the fields are filled in.
  using Check = std::function<Expected<desk::IssueCheck>(const desk::IssueRequest&)>;
  using Issue = std::function<Expected<desk::IssueOutcome>(const desk::IssueRequest&)>;

  /// `patient` is the reference; `words` name the patient in the heading.
  /// What is typed is kept beside `clinic_file` until it is issued.
  IssueDialog(wxWindow* parent, std::string patient, const std::string& words,
              const std::filesystem::path& clinic_file, Check check, Issue issue);

  /// Empty when nothing was handed over.
  [[nodiscard]] const std::vector<Unit>& units() const { return units_; }

 private:
  void make_fields();
  [[nodiscard]] desk::IssueRequest request() const;
  [[nodiscard]] FollowingAnswer::Work checking() const;
  std::string attempt();

  std::string patient_;
  Check check_;
  Issue issue_;
  std::vector<Unit> units_;
  wxTextCtrl* scan_ = nullptr;
  wxChoice* side_ = nullptr;
  wxTextCtrl* item_ = nullptr;
  wxTextCtrl* quantity_ = nullptr;
  wxTextCtrl* lot_ = nullptr;
  wxTextCtrl* serial_ = nullptr;
  wxTextCtrl* by_ = nullptr;
  wxTextCtrl* because_ = nullptr;
  wxTextCtrl* checks_ = nullptr;
  FollowingAnswer following_;
};

/// What became of a part in use.
class EndPartDialog : public AskingForm {
 public:
  using End = std::function<std::string(const desk::UnitEnding&)>;

  /// `end` gives the refusal, or "".
  EndPartDialog(wxWindow* parent, const desk::UnitChoice& unit, const std::string& words,
                Date today, const std::filesystem::path& clinic_file, End end);

 private:
  std::string attempt(const desk::UnitChoice& unit, const End& end) const;

  std::vector<EndReason> reasons_;
  wxChoice* reason_ = nullptr;
  wxTextCtrl* on_ = nullptr;
  wxCheckBox* back_ = nullptr;
  wxCheckBox* unopened_ = nullptr;
  wxCheckBox* mistake_ = nullptr;
};

}  // namespace sparewell::desktop
