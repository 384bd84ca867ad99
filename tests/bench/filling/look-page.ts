import "../../../runner/form/form.css";
